package org.seamwright.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.seamwright.region.Maps.ORIGIN;
import static org.seamwright.region.Maps.X;
import static org.seamwright.region.Maps.Z;

import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.seamwright.basis.Notice;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/** Marks about the axis that the piece shows. */
class FoundAxisTest {
  private static final Treatment BARE = Treatment.BARE;
  private static final double INF = Double.POSITIVE_INFINITY;
  private static final Optional<Mark.FoundAxis> FOUND =
      Optional.of(new Mark.FoundAxis(false, false));

  /** A prism of 64 sides, 20 high, its foot somewhere and its axis askew. */
  private static final Mesh PRISM =
      Shapes.moved(Shapes.rotated(Shapes.cylinder(5, 20, 64, 4, true), 1, 2, 0.5, 0.6), 40, -7, 12);

  private static final double PER_MM = 64 * 2 * 5 * Math.sin(Math.PI / 64);

  @Test
  void heightsCountFromTheLowestPlace() throws MarkException {
    Mark ring = new Mark.Ring("", BARE, ORIGIN, Z, 3, 8, 0, INF, FOUND);
    // A slab of a prism has its girth times its height, be it a little askew.
    assertThat(Maps.bare(PRISM, ring)).isCloseTo(5 * PER_MM, within(1e-4 * PER_MM));
    assertThat(Maps.of(PRISM, ring).notices())
        .extracting(Notice::code)
        .containsExactly(Marks.AXIS_FOUND);
  }

  @Test
  void aPointCountsByItsFoot() throws MarkException {
    Mark ring =
        new Mark.Ring(
            "",
            BARE,
            Vector3D.of(40, -7, 12),
            Z,
            -2,
            INF,
            0,
            INF,
            Optional.of(new Mark.FoundAxis(true, false)));
    // From the middle of the prism, 10 from its top: 12 of girth and one end.
    double end = 32 * 25 * Math.sin(Math.PI / 32);
    assertThat(Maps.bare(PRISM, ring)).isCloseTo(12 * PER_MM + end, within(1e-3 * PER_MM));
  }

  @Test
  void sectorsAndTurnsToo() throws MarkException {
    double all = Maps.area(PRISM);
    Mark sector = new Mark.Sector("", BARE, ORIGIN, Z, X, 10, 55, FOUND);
    assertThat(Maps.bare(PRISM, sector)).isCloseTo(all / 8, within(1e-4 * all));
    Mark turn = new Mark.Turn("", ORIGIN, Z, 4, FOUND);
    assertThat(Maps.bare(PRISM, sector, turn)).isCloseTo(all / 2, within(1e-4 * all));
  }

  @Test
  void refusedWithoutAClearAxis() {
    Mark ring = new Mark.Ring("", BARE, ORIGIN, Z, 3, 8, 0, INF, FOUND);
    assertThatThrownBy(() -> Maps.of(Shapes.cube(10, 5), ring))
        .isInstanceOf(MarkException.class)
        .hasMessageContaining("no clear axis");
    assertThatThrownBy(() -> Maps.of(Shapes.icosphere(10, 3), ring))
        .isInstanceOf(MarkException.class)
        .hasMessageContaining("sphere");
    Mark along =
        new Mark.Sector(
            "", BARE, ORIGIN, X, Z, 10, 55, Optional.of(new Mark.FoundAxis(false, true)));
    assertThatThrownBy(() -> Maps.of(Shapes.torus(30, 8, 60, 24), along))
        .isInstanceOf(MarkException.class)
        .hasMessageContaining("along the axis");
  }
}
