package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.testsupport.Shapes;

/**
 * Small files made to burst are refused, with the reason and a remedy, before they have taken more
 * than the 64 MiB that {@link Growth} allows any file, or a few times that in passing.
 */
class BombTest {
  /** All that is allocated, most of it given back at once: arrays grown by half, words, places. */
  private static final long MOST_ALLOCATED = 16 * Growth.ALWAYS;

  @TempDir Path directory;

  private MeshFileException refused(String name, byte[] bytes) {
    ThreadMXBean thread = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = thread.getCurrentThreadAllocatedBytes();
    MeshFileException refusal =
        catchThrowableOfType(MeshFileException.class, () -> Bytes.read(directory, name, bytes));
    long allocated = thread.getCurrentThreadAllocatedBytes() - before;
    assertThat(refusal).as(name).isNotNull();
    assertThat(refusal.getMessage()).doesNotContain("start Java with more memory");
    assertThat(refusal.remedy()).isNotBlank();
    assertThat(allocated).as("bytes allocated for " + name).isLessThan(MOST_ALLOCATED);
    return refusal;
  }

  @Test
  void packedZerosAreNotUnpacked() {
    byte[] bomb = SceneBytes.gzip(new byte[96 << 20]);
    assertThat(bomb.length).isLessThan(1 << 20);
    MeshFileException refusal = refused("a.stl.gz", bomb);
    assertThat(refusal.problem()).contains("64 MiB", "20 times");
    assertThat(refusal.remedy()).contains("gunzip");
  }

  @Test
  void aPackedModelMadeOfSpacesIsNotUnpacked() {
    String spaces = " ".repeat(80 << 20);
    MeshFileException refusal =
        refused("a.3mf", SceneBytes.threeMf(SceneBytes.model("", spaces, "")));
    assertThat(refusal.problem()).contains("64 MiB");
  }

  @Test
  void componentsThatDoubleAgainAndAgainAreRefused() {
    StringBuilder objects = new StringBuilder(SceneBytes.object(Shapes.cube(1, 1), 1, ""));
    for (int id = 2; id <= 60; id++) {
      String component = "<component objectid=\"" + (id - 1) + "\"/>";
      objects.append("<object id=\"" + id + "\"><components>" + component + component);
      objects.append("</components></object>");
    }
    String model = SceneBytes.model("", objects.toString(), "<item objectid=\"60\"/>");
    assertThat(refused("a.3mf", SceneBytes.threeMf(model)).problem()).contains("copies");
    String empty = model.replaceFirst("<triangles>(?s:.*?)</triangles>", "<triangles/>");
    assertThat(refused("b.3mf", SceneBytes.threeMf(empty)).problem()).contains("copies");
  }

  @Test
  void elementsAndListsNestedWithoutEndAreRefused() {
    String deep = "<a>".repeat(1 << 20);
    assertThat(refused("a.3mf", SceneBytes.threeMf(SceneBytes.model("", deep, ""))).problem())
        .contains("nested");
    assertThat(refused("a.gltf", Bytes.text("{\"a\":" + "[".repeat(1 << 20))).problem())
        .contains("nested");
    String entities = "<!DOCTYPE m [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]>";
    assertThat(
            refused(
                    "b.3mf",
                    SceneBytes.threeMf(
                        SceneBytes.model("", "&b;", "").replace("<model", entities + "<model")))
                .problem())
        .contains("document type");
  }

  @Test
  void manyNodesWithOneMeshAreCounted() {
    StringBuilder roots = new StringBuilder("0");
    StringBuilder nodes = new StringBuilder("{\"mesh\":0}");
    for (int n = 1; n < 20_000; n++) {
      roots.append(',').append(n);
      nodes.append(",{\"mesh\":0}");
    }
    String json =
        SceneBytes.gltf(Shapes.sphere(1, 30, 30), "", "")
            .replace("\"nodes\":[0]", "\"nodes\":[" + roots + "]")
            .replace("{\"name\":\"body\",\"mesh\":0}", nodes);
    byte[] bytes = SceneBytes.glb(json, SceneBytes.numbers(Shapes.sphere(1, 30, 30)));
    assertThat(refused("a.glb", bytes).problem()).contains("copies");
  }

  @Test
  void announcedCountsAreNotBelieved() {
    for (String encoding : new String[] {"ascii", "binary_little_endian"}) {
      byte[] ply = SceneBytes.ply(Shapes.cube(1, 1), encoding);
      for (String element : new String[] {"element vertex 8", "element face 12"}) {
        String text = new String(ply, java.nio.charset.StandardCharsets.ISO_8859_1);
        String more = text.replace(element, element + "00000000");
        byte[] bytes = more.getBytes(java.nio.charset.StandardCharsets.ISO_8859_1);
        assertThat(refused("a.ply", bytes).problem()).contains("cut off", "announces");
      }
    }
    String json = SceneBytes.gltf(Shapes.cube(1, 1), "", "");
    byte[] numbers = SceneBytes.numbers(Shapes.cube(1, 1));
    String zeros =
        json.replaceFirst("\"bufferView\":0,", "").replace("\"count\":8,", "\"count\":2000000000,");
    assertThat(refused("a.glb", SceneBytes.glb(zeros, numbers)).place()).isEqualTo("accessors[0]");
    String sparse =
        zeros.replaceFirst(
            "\"type\":\"VEC3\"",
            "\"type\":\"VEC3\",\"sparse\":{\"count\":1,\"indices\":{\"bufferView\":1,"
                + "\"componentType\":5125},\"values\":{\"bufferView\":0}}");
    assertThat(refused("b.glb", SceneBytes.glb(sparse, numbers)).problem()).contains("MiB");
    String many = json.replace("\"count\":8,", "\"count\":2000000000,");
    assertThat(refused("c.glb", SceneBytes.glb(many, numbers)).problem()).contains("too short");
  }

  @Test
  void overlappingEntriesOfAnArchiveShareOneAllowance() {
    // Every part is all the same megabytes: each alone is within bounds.
    Map<String, byte[]> parts = new LinkedHashMap<>();
    StringBuilder objects = new StringBuilder();
    for (int p = 0; p < 10; p++) {
      parts.put(
          "3D/p" + p + ".model",
          Bytes.text(SceneBytes.model("", " ".repeat(10 << 20) + "<object id=\"1\"/>", "")));
      objects.append("<component p:path=\"/3D/p" + p + ".model\" objectid=\"1\"/>");
    }
    String production =
        "xmlns:p=\"http://schemas.microsoft.com/3dmanufacturing/production/2015/06\"";
    parts.put(
        "3D/3dmodel.model",
        Bytes.text(
            SceneBytes.model(
                production,
                "<object id=\"1\"><components>" + objects + "</components></object>",
                "<item objectid=\"1\"/>")));
    byte[] bytes = SceneBytes.zip(SceneBytes.withRelations(parts));
    assertThat(refused("a.3mf", bytes).problem()).contains("64 MiB");
  }

  @Test
  void manyPolygonsOfManyCornersAreNotSplitForHours() {
    StringBuilder text = new StringBuilder();
    StringBuilder face = new StringBuilder("f");
    for (int i = 1; i <= 10_000; i++) {
      text.append("v 0 0 ").append(i).append('\n');
      face.append(' ').append(i);
    }
    text.append((face + "\n").repeat(50));
    assertThat(refused("a.obj", Bytes.text(text.toString())).problem()).contains("too long");
  }
}
