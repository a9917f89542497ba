package org.seamwright.window;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.benchmark.Torus;
import org.seamwright.desk.Desk;
import org.seamwright.desk.DeskState;
import org.seamwright.desk.MarkEdits;
import org.seamwright.desk.Place;
import org.seamwright.desk.Watched;
import org.seamwright.job.Job;
import org.seamwright.meshfile.StlWriter;
import org.seamwright.picture.Palette;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;

/**
 * How long the window needs for what must feel immediate, on the rippled torus of a million faces
 * in a binary STL file of 50 MB: without a display, so up to what is handed to the graphics
 * library. The threads are those of the window.
 *
 * <pre>java -cp target/classes:target/test-classes:target/lib/* org.seamwright.window.WindowTimes</pre>
 */
final class WindowTimes {
  private static final int POINTS = 2000;
  private static final int STROKES = 15;
  private static final double WIDTH = 1000;
  private static final double HEIGHT = 700;

  private final List<ExecutorService> threads = new ArrayList<>();
  private final ExecutorService userInterface = thread();
  private final Desk desk = new Desk(thread(), thread(), thread(), userInterface);
  private final PictureDesk pictures =
      new PictureDesk(desk, new Watched<>(Optional.empty()), thread(), userInterface);

  private WindowTimes() {}

  private ExecutorService thread() {
    ExecutorService thread = Executors.newSingleThreadExecutor();
    threads.add(thread);
    return thread;
  }

  /** Prints the figures. */
  public static void main(String[] args) throws Exception {
    WindowTimes times = new WindowTimes();
    Path folder = Files.createTempDirectory("window-times");
    Path file = folder.resolve("torus.stl");
    StlWriter.writeBinary(Torus.of(1000, 500), file, "Rippled torus");
    try {
      times.run(file);
    } finally {
      times.userInterface.submit(times.desk::cancel).get();
      Thread.sleep(500);
      times.threads.forEach(ExecutorService::shutdownNow);
      Files.delete(file);
      Files.delete(folder);
    }
  }

  private void run(Path file) throws Exception {
    long start = System.nanoTime();
    Picture picture = next(() -> desk.open(file), p -> true);
    tell("open 50 MB STL to the first picture", since(start));
    PieceModel model = picture.model();
    pointer(model);
    CountDownLatch planned = new CountDownLatch(1);
    userInterface.execute(
        () -> {
          desk.state().watch(s -> open(s, planned));
          desk.chooseScale(new Job.Scale.Unit("mm"));
          // A coarse limit: what is timed are marks, and the plan must not take the processors.
          desk.change(job -> job.withSections(new Job.SectionRules(new Job.Limit.Area(1e6), 2, 5)));
          pictures.at(Place.MARKS);
        });
    planned.await();
    Thread.sleep(3000);
    strokes(pictures.picture().get().orElseThrow().model());
  }

  private static void open(DeskState state, CountDownLatch planned) {
    if (state.isPlanned() || state.trouble().isPresent()) {
      state.trouble().ifPresent(t -> System.out.println(t.problem()));
      planned.countDown();
    }
  }

  /** From the pointer's place to the face and the colours that light it, and the brush's ring. */
  private void pointer(PieceModel model) {
    OrbitCamera camera = model.camera();
    camera.resize(WIDTH, HEIGHT);
    camera.moveTo(camera.fitted(StandardView.CORNER));
    SplittableRandom lot = new SplittableRandom(1);
    double[] pick = new double[POINTS];
    double[] ring = new double[POINTS];
    int[] colours = new int[FaceClasses.count(40)];
    for (int i = 0; i < POINTS; i++) {
      long start = System.nanoTime();
      Optional<Pick> under =
          Pick.under(model, camera.ray(lot.nextDouble(WIDTH), lot.nextDouble(HEIGHT)));
      Arrays.fill(colours, Palette.light(OptionalInt.of(i % Palette.SIZE).getAsInt()));
      pick[i] = since(start);
      under.ifPresent(
          p -> {
            double[] n = {0, 0, 1};
            Sketch.ring(model, p.xyz(), n, 4);
          });
      ring[i] = since(start);
    }
    tell("pointer to the face under it, median", median(pick));
    tell("pointer to the brush's ring on the surface, median", median(ring));
  }

  /** From letting go of a stroke to its exact edge, ready to be drawn. */
  private void strokes(PieceModel model) throws Exception {
    double[] took = new double[STROKES];
    for (int i = 0; i < STROKES; i++) {
      List<Vector3D> path = new ArrayList<>();
      for (int k = 0; k <= 10; k++) {
        double a = 0.4 * i + 0.01 * k;
        Vector3D p = Vector3D.of(200 * Math.cos(a), 200 * Math.sin(a), 45);
        path.add(
            model
                .nearest(p.getX(), p.getY(), p.getZ(), 50)
                .map(Vector3D::of)
                .orElseThrow());
      }
      Mark stroke = new Mark.Near("", Treatment.BARE, path, 4);
      int marks = i + 1;
      long start = System.nanoTime();
      next(
          () -> desk.change(job -> job.withMarks(MarkEdits.added(job.marks(), stroke))),
          p ->
              desk.state().get().isMarked()
                  && desk.state().get().job().orElseThrow().marks().size() == marks);
      took[i] = since(start);
      // The plan that follows would share the processors with the next stroke.
      Thread.sleep(2500);
    }
    tell("stroke let go to its exact edge, first", took[0]);
    tell("stroke let go to its exact edge, median", median(took));
  }

  private interface Wanted {
    boolean is(Picture picture);
  }

  /** The next picture that is wanted, after something was done. */
  private Picture next(Runnable done, Wanted wanted) throws Exception {
    AtomicReference<Picture> found = new AtomicReference<>();
    CountDownLatch there = new CountDownLatch(1);
    userInterface.execute(
        () -> {
          Optional<Picture> before = pictures.picture().get();
          pictures
              .picture()
              .watch(
                  p -> {
                    if (found.get() == null
                        && p.isPresent()
                        && !p.equals(before)
                        && wanted.is(p.get())) {
                      found.set(p.get());
                      there.countDown();
                    }
                  });
          done.run();
        });
    there.await();
    return found.get();
  }

  private static double since(long start) {
    return (System.nanoTime() - start) / 1e6;
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  private static void tell(String what, double ms) {
    System.out.printf("| %s | %.3g ms |%n", what, ms);
  }
}
