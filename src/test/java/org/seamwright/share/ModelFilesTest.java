package org.seamwright.share;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.basis.Progress;
import org.seamwright.job.PlannedJob;
import org.seamwright.job.Planner;
import org.seamwright.mesh.Faces;
import org.seamwright.meshfile.MeshDocument;
import org.seamwright.meshfile.MeshFiles;
import org.seamwright.picture.Palette;
import org.seamwright.picture.Tones;
import org.seamwright.section.Section;
import org.seamwright.testsupport.Reference;

/** Models for other programs, read back with the project's readers and with VTK. */
class ModelFilesTest {
  private static final String VTK =
      """
      import sys, vtk
      if sys.argv[1].endswith('ply'):
          r = vtk.vtkPLYReader()
      else:
          r = vtk.vtkOBJReader()
      r.SetFileName(sys.argv[1]); r.Update()
      d = r.GetOutput()
      m = vtk.vtkMassProperties(); m.SetInputData(d); m.Update()
      print(d.GetNumberOfPolys(), repr(m.GetSurfaceArea()))
      areas = {}
      c = d.GetCellData().GetArray('RGB')
      for i in range(d.GetNumberOfCells() if c else 0):
          key = '%02X%02X%02X' % tuple(int(x) for x in c.GetTuple(i))
          areas[key] = areas.get(key, 0) + d.GetCell(i).ComputeArea()
      for k in sorted(areas):
          print(k, repr(areas[k]))
      """;

  @TempDir static Path folder;
  private static PlannedJob planned;

  @BeforeAll
  static void plan() throws Exception {
    planned = Planner.plan(Path.of("models/cup.json"), Progress.NONE);
    try (OutputStream out = Files.newOutputStream(folder.resolve("cup.ply"))) {
      ModelFiles.ply(planned, out);
    }
    try (OutputStream out = Files.newOutputStream(folder.resolve("cup.obj"))) {
      ModelFiles.obj(planned, out);
    }
  }

  private static Map<String, Double> areas(MeshDocument read) {
    Map<String, Double> areas = new TreeMap<>();
    for (int f = 0; f < read.mesh().faceCount(); f++) {
      areas.merge(
          read.labels().names().get(read.labels().of()[f]),
          Faces.area(read.mesh(), f),
          Double::sum);
    }
    return areas;
  }

  /** Net area of the sections of each colour, mm². */
  private static Map<String, Double> byColour() {
    Map<String, Double> areas = new TreeMap<>();
    int[] tones = Tones.of(planned.sections());
    for (Section s : planned.sections().sections()) {
      areas.merge(String.format("%06X", Palette.light(tones[s.id()])), s.netMm2(), Double::sum);
    }
    return areas;
  }

  @Test
  void objHasAGroupForEachSection() throws Exception {
    Map<String, Double> areas = areas(MeshFiles.read(folder.resolve("cup.obj"), Progress.NONE));
    for (Section section : planned.sections().sections()) {
      double exact = section.netMm2();
      assertThat(areas.get("Section " + section.id())).isCloseTo(exact, within(exact * 1e-9));
    }
    assertThat(areas).containsKey("Bare").hasSize(planned.sections().sections().size() + 1);
  }

  @Test
  void plyHasTheColoursOfThePictures() throws Exception {
    Map<String, Double> areas = areas(MeshFiles.read(folder.resolve("cup.ply"), Progress.NONE));
    byColour()
        .forEach(
            (rgb, exact) ->
                assertThat(areas.get("#" + rgb)).as(rgb).isCloseTo(exact, within(exact * 1e-9)));
  }

  @Test
  void vtkReadsTheSame() throws Exception {
    String python = "/usr/bin/python3";
    Reference.require("VTK", hasVtk(python), "apt-get install python3-vtk9");
    for (String name : new String[] {"cup.ply", "cup.obj"}) {
      String[] lines = vtk(python, folder.resolve(name)).split("\\R");
      String[] first = lines[0].split(" ");
      assertThat(Integer.parseInt(first[0])).isEqualTo(planned.sections().mesh().faceCount());
      double area = planned.survey().areaMm2();
      // VTK keeps coordinates as floats.
      assertThat(Double.parseDouble(first[1])).isCloseTo(area, within(area * 1e-5));
      Map<String, Double> seen = new TreeMap<>();
      for (int i = 1; i < lines.length; i++) {
        seen.put(lines[i].split(" ")[0], Double.parseDouble(lines[i].split(" ")[1]));
      }
      if (name.endsWith("ply")) {
        byColour()
            .forEach(
                (rgb, exact) ->
                    assertThat(seen.get(rgb)).as(rgb).isCloseTo(exact, within(exact * 1e-5)));
      }
    }
  }

  private static boolean hasVtk(String python) throws InterruptedException {
    try {
      return new ProcessBuilder(python, "-c", "import vtk")
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start()
              .waitFor()
          == 0;
    } catch (IOException e) {
      return false;
    }
  }

  private static String vtk(String python, Path file) throws IOException, InterruptedException {
    Path script = Files.writeString(folder.resolve("read.py"), VTK);
    Process process =
        new ProcessBuilder(python, script.toString(), file.toString())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    return out;
  }
}
