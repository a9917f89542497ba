package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamwright.basis.Progress;
import org.seamwright.job.PlannedJob;

class PiecePresenterTest {
  private static final PlannedJob RING = PlannedFixture.ring(128, 48);
  private static final OpenedPiece PIECE = OpenedPiece.of(RING, Progress.NONE);
  private static final double WIDTH = 800;
  private static final double HEIGHT = 600;

  private static OrbitCamera camera() {
    OrbitCamera camera = PIECE.camera();
    camera.resize(WIDTH, HEIGHT);
    camera.moveTo(camera.fitted(StandardView.CORNER));
    return camera;
  }

  @ParameterizedTest
  @ValueSource(longs = {5, 6})
  void findsTheFaceThatATestOfEveryFaceFinds(long seed) {
    Random random = new Random(seed);
    PiecePresenter presenter = new PiecePresenter(PIECE);
    OrbitCamera camera = camera();
    int hits = 0;
    for (int i = 0; i < 150; i++) {
      camera.moveTo(camera.fitted(360 * random.nextDouble(), 180 * random.nextDouble() - 90));
      double px = WIDTH * random.nextDouble();
      double py = HEIGHT * random.nextDouble();
      presenter.pointAt(camera.ray(px, py));
      int face =
          Pinhole.firstFace(
              RING.sections().mesh(), Pinhole.ray(camera.pose(), WIDTH, HEIGHT, px, py));
      // Within a rounding of an edge two rays may part; the section at that place is what counts.
      int section = face < 0 ? 0 : RING.sections().sectionOf()[face];
      assertThat(presenter.pointed().get().isPresent())
          .as("seed %d, ray %d", seed, i)
          .isEqualTo(face >= 0);
      assertThat(presenter.hovered().get().orElse(0))
          .as("seed %d, ray %d", seed, i)
          .isEqualTo(section);
      hits += face >= 0 ? 1 : 0;
    }
    assertThat(hits).as("rays that met the ring, seed %d", seed).isGreaterThan(40);
  }

  @Test
  void showsThePointedSectionBeforeTheChosenOne() {
    PiecePresenter presenter = new PiecePresenter(PIECE);
    assertThat(presenter.shown()).isEmpty();
    presenter.select(4);
    assertThat(presenter.shown()).hasValue(4);
    presenter.hover(9);
    assertThat(presenter.shown()).hasValue(9);
    presenter.pointAway();
    assertThat(presenter.shown()).hasValue(4);
    presenter.select(0);
    assertThat(presenter.shown()).isEmpty();
  }

  @Test
  void writesNumbersOnlyOnTheirOwnSectionsInSight() {
    PiecePresenter presenter = new PiecePresenter(PIECE);
    OrbitCamera camera = camera();
    camera.moveTo(camera.fitted(StandardView.FRONT));
    List<Optional<OrbitCamera.OnScreen>> numbers = presenter.numbers(camera);
    assertThat(numbers).hasSize(12);
    // Seen from -y: the outer sections from 180 to 270 degrees face the viewer, those from 45 to
    // 135 degrees face away.
    assertThat(numbers.get(8)).isPresent();
    assertThat(numbers.get(10)).isPresent();
    assertThat(numbers.get(2)).isEmpty();
    assertThat(numbers.get(4)).isEmpty();
    for (int id = 1; id <= 12; id++) {
      if (numbers.get(id - 1).isPresent()) {
        OrbitCamera.OnScreen at = numbers.get(id - 1).get();
        double[] ray = Pinhole.ray(camera.pose(), WIDTH, HEIGHT, at.x(), at.y());
        int face = Pinhole.firstFace(RING.sections().mesh(), ray);
        assertThat(RING.sections().sectionOf()[face]).as("number %d", id).isEqualTo(id);
      }
    }
  }

  @Test
  void standsBeforeTheMiddleOfAnOuterSection() {
    PiecePresenter presenter = new PiecePresenter(PIECE);
    for (int sector = 0; sector < 6; sector++) {
      SectionFacing.Direction to = presenter.facing(2 * sector + 1);
      // The sector's middle lies at 45 · (sector + 1/2) degrees from x, the viewer's 0 at -y.
      double expected = 45 * (sector + 0.5) + 90;
      assertThat(Math.IEEEremainder(to.azimuthDegrees() - expected, 360)).isCloseTo(0, within(6.0));
      assertThat(to.elevationDegrees()).isCloseTo(0, within(6.0));
    }
  }

  @Test
  void looksOverTheRimAtASectionThatFacesInwards() {
    PiecePresenter presenter = new PiecePresenter(PIECE);
    for (int sector = 0; sector < 6; sector++) {
      int id = 2 * sector + 2;
      SectionFacing.Direction to = presenter.facing(id);
      double[] ahead = Pinhole.axes(to.azimuthDegrees(), to.elevationDegrees())[2];
      SectionPlaces places = PIECE.places();
      int seen = 0;
      for (int i = 0; i < places.count(id); i++) {
        double[] p = places.place(id, i);
        double[] n = places.normal(id, i);
        double[] back = {p[0], p[1], p[2], -ahead[0], -ahead[1], -ahead[2]};
        for (int axis = 0; axis < 3; axis++) {
          back[axis] += 1e-3 * n[axis];
        }
        boolean open = Pinhole.firstFace(RING.sections().mesh(), back) < 0;
        seen += open && Pinhole.dot(n, ahead) < 0 ? 1 : 0;
      }
      // The outer half of the tube hides the lower part of the inner half from everywhere.
      assertThat(seen).as("places of section %d in sight", id).isGreaterThan(places.count(id) / 3);
    }
  }

  @Test
  void tellsTreatmentsApart() {
    SectionTexts texts = new SectionTexts(RING);
    Set<String> sentences = new TreeSet<>();
    int[] classes = FaceClasses.of(RING);
    for (int f = 0; f < classes.length; f++) {
      Spot spot = new Spot(f, classes[f], 0, 0, 0);
      if (spot.section() == 0) {
        sentences.add(texts.place(spot));
      } else {
        assertThat(texts.place(spot)).contains("section " + spot.section());
        assertThat(texts.place(spot).contains("lap")).isEqualTo(spot.inLap());
      }
    }
    assertThat(sentences).hasSize(2);
  }

  @Test
  void showsTheFiguresOfThePlan() {
    SectionTexts texts = new SectionTexts(RING);
    var section = RING.sections().sections().get(6);
    var lines = texts.figures(7);
    assertThat(lines).hasSize(7);
    // The fixture lays 1 mg and takes 2 s for each cm² worked.
    double cm2 = section.workedMm2() / 100;
    assertThat(number(lines.get(0).value())).isCloseTo(section.netMm2() / 100, within(0.05));
    assertThat(number(lines.get(3).value())).isCloseTo(cm2, within(0.05));
    assertThat(number(lines.get(4).value())).isCloseTo(40, within(0.05));
    assertThat(number(lines.get(5).value())).isCloseTo(cm2, within(0.05));
    assertThat(texts.shareOfLimit(7)).isCloseTo(cm2 / 40, within(1e-12));
    assertThat(texts.rows().get(6).overLimit()).isEqualTo(cm2 > 40);
    assertThat(texts.rows()).extracting(SectionTexts.Row::id).isSorted().hasSize(12);
  }

  private static double number(String text) {
    return Double.parseDouble(text.replaceAll("[^0-9.].*", ""));
  }
}
