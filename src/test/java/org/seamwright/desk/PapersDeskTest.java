package org.seamwright.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.job.Job;
import org.seamwright.meshfile.StlWriter;
import org.seamwright.paper.Papers;
import org.seamwright.testsupport.Shapes;

class PapersDeskTest {
  @TempDir private Path dir;

  private final Deque<Runnable> todo = new ArrayDeque<>();
  private final Desk desk = new Desk(todo::add, todo::add, todo::add, todo::add);
  private final PapersDesk papers = new PapersDesk(desk, todo::add, todo::add);

  @BeforeEach
  void open() throws Exception {
    Path mesh = dir.resolve("block.stl");
    StlWriter.writeBinary(Shapes.cube(40, 4), mesh, "A test block");
    desk.open(mesh);
    work();
    desk.chooseScale(new Job.Scale.Unit("mm"));
    work();
  }

  private void work() {
    while (!todo.isEmpty()) {
      todo.poll().run();
    }
  }

  @Test
  void makesAllPapersAndSaysWhenTheyAreStale() throws Exception {
    Path folder = papers.offered().orElseThrow();
    assertThat(folder).isEqualTo(dir.resolve("block-papers"));
    papers.make(folder);
    work();
    assertThat(papers.status().get()).isInstanceOf(PapersDesk.Status.Made.class);
    assertThat(papers.areMade()).isTrue();
    assertThat(names(folder)).containsAll(Papers.names()).contains("plan.json");
    assertThat(names(folder)).noneMatch(n -> n.startsWith("."));
    assertThat(NextStep.of(desk.state().get(), true).tone()).isNotEqualTo(NextStep.Tone.WRONG);
    desk.change(job -> PlatingForm.withPieceName(job, "Other block"));
    work();
    assertThat(papers.areMade()).isFalse();
  }

  @Test
  void leavesTheFolderAsItWasWhenItIsBrokenOff() throws Exception {
    Path folder = dir.resolve("out");
    Files.createDirectories(folder);
    Files.writeString(folder.resolve("mine.txt"), "kept");
    papers.make(folder);
    papers.cancel();
    work();
    assertThat(papers.status().get()).isInstanceOf(PapersDesk.Status.Idle.class);
    assertThat(names(folder)).containsExactly("mine.txt");
  }

  @Test
  void saysWhyPapersCannotBeWritten() throws Exception {
    Path file = dir.resolve("a-file");
    Files.writeString(file, "in the way");
    papers.make(file);
    work();
    assertThat(papers.status().get()).isInstanceOf(PapersDesk.Status.Failed.class);
  }

  private static List<String> names(Path folder) throws Exception {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).toList();
    }
  }
}
