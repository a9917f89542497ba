package org.seamwright.meshfile;

import static org.assertj.core.api.Assertions.assertThat;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamwright.basis.Progress;

/**
 * The densest files of each format, made to take as much memory for their size as can be, are read,
 * or refused for it, without holding more than twenty times their size. Each is read by a Java
 * machine of its own that has no more.
 */
class MemoryTest {
  private static final int TIMES = 20;

  /** Above this, twenty times the size is more than what any file may take ({@link Growth}). */
  private static final int ABOUT = 4_000_000;

  /** Reads a file; exit code 0 if it is read or refused for what it holds. */
  public static void main(String[] args) {
    try {
      MeshFiles.read(Path.of(args[0]), Progress.NONE);
    } catch (MeshFileException refused) {
      System.out.println(refused.getMessage());
      System.exit(refused.getCause() instanceof OutOfMemoryError ? 1 : 0);
    }
  }

  @TempDir Path directory;

  private static byte[] dense(String kind) {
    return switch (kind) {
      case "loose.stl" -> looseBinary();
      case "loose-text.stl" -> looseText();
      case "points.obj" -> points("v ", 10, "");
      case "faces.obj" -> repeated("v 0 0 0\nv 1 0 0\nv 0 1 0\n", "f 1 2 3\n");
      case "polygons.obj" ->
          repeated("v 0 0 0\nv 1 0 0\nv 1 1 0\nv 0 1 0\nv 0 0 1\n", "f 1 2 3 4 5 1 2 3 4 5 1 2\n");
      case "points.ply" -> points("", 8, plyHeader("ascii", "char"));
      case "bytes.ply" -> bytesPly();
      case "faces.ply" -> facesPly();
      default -> throw new IllegalArgumentException(kind);
    };
  }

  private static byte[] looseBinary() {
    Random random = new Random(1);
    float[][] facets = new float[ABOUT / 50][9];
    for (float[] facet : facets) {
      for (int i = 0; i < 9; i++) {
        facet[i] = random.nextFloat();
      }
    }
    return Bytes.stl("", facets.length, facets);
  }

  private static byte[] looseText() {
    StringBuilder text = new StringBuilder("solid\n");
    for (int f = 0; text.length() < ABOUT; f++) {
      text.append("facet normal 0 0 1 outer loop");
      for (int k = 0; k < 3; k++) {
        text.append(" vertex ").append(f).append(' ').append(k).append(' ').append(k * k);
      }
      text.append(" endloop endfacet ");
    }
    return Bytes.text(text + "endsolid\n");
  }

  /** The places of this test, of the readers and of the library that they read numbers with. */
  private static String classPath() {
    return Stream.of(MemoryTest.class, MeshFiles.class, JavaDoubleParser.class)
        .map(c -> Path.of(URI.create(c.getProtectionDomain().getCodeSource().getLocation() + "")))
        .map(Path::toString)
        .collect(Collectors.joining(File.pathSeparator));
  }

  /** Distinct points in as few letters as can be, and one face. */
  private static byte[] points(String before, int letters, String header) {
    StringBuilder text = new StringBuilder();
    int count = ABOUT / letters;
    for (int i = 0; i < count; i++) {
      text.append(before).append(i % 100).append(' ').append(i / 100 % 100).append(' ');
      text.append(i / 10_000).append('\n');
    }
    boolean obj = header.isEmpty();
    String head = obj ? "" : header.replace("COUNT", Integer.toString(count)).replace("FACES", "1");
    return Bytes.text(head + text + (obj ? "f 1 2 101\n" : "3 0 1 100\n"));
  }

  private static byte[] repeated(String head, String line) {
    return Bytes.text(head + line.repeat(ABOUT / line.length()));
  }

  private static String plyHeader(String encoding, String type) {
    return "ply\nformat "
        + encoding
        + " 1.0\nelement vertex COUNT\nproperty "
        + type
        + " x\nproperty "
        + type
        + " y\nproperty "
        + type
        + " z\nelement face FACES\nproperty list uchar uchar vertex_indices\nend_header\n";
  }

  /** Three bytes a point. */
  private static byte[] bytesPly() {
    int count = ABOUT / 3;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(
        Bytes.text(
            plyHeader("binary_little_endian", "char")
                .replace("COUNT", Integer.toString(count))
                .replace("FACES", "1")));
    for (int i = 0; i < count; i++) {
      out.write(i & 0x7F);
      out.write(i >> 7 & 0x7F);
      out.write(i >> 14 & 0x7F);
    }
    out.writeBytes(new byte[] {3, 0, 1, (byte) 200});
    return out.toByteArray();
  }

  /** Four bytes a triangle. */
  private static byte[] facesPly() {
    int count = ABOUT / 4;
    ByteBuffer out = ByteBuffer.allocate(ABOUT + 1000).order(ByteOrder.LITTLE_ENDIAN);
    out.put(
        Bytes.text(
            plyHeader("binary_little_endian", "char")
                .replace("COUNT", "4")
                .replace("FACES", Integer.toString(count))));
    out.put(new byte[] {0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1});
    for (int i = 0; i < count; i++) {
      out.put(new byte[] {3, 0, 1, (byte) (2 + i % 2)});
    }
    return java.util.Arrays.copyOf(out.array(), out.position());
  }

  @ParameterizedTest
  @CsvSource({
    "loose.stl, read",
    "loose-text.stl, read",
    "points.obj, read",
    "faces.obj, read",
    "polygons.obj, over 20 times the file",
    "points.ply, read",
    "bytes.ply, over 20 times the file",
    "faces.ply, read"
  })
  void twentyTimesItsSizeIsEnough(String kind, String outcome)
      throws IOException, InterruptedException {
    byte[] bytes = dense(kind);
    Path file = Files.write(directory.resolve(kind), bytes);
    Process reader =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                // Nearly all for what is old, where large arrays go at once.
                "-Xmn3m",
                "-Xmx" + TIMES * (bytes.length / 1024) + "k",
                "-cp",
                classPath(),
                MemoryTest.class.getName(),
                file.toString())
            .redirectErrorStream(true)
            .start();
    String said = new String(reader.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(reader.waitFor()).as(said).isZero();
    if (!outcome.equals("read")) {
      assertThat(said).contains(outcome, "binary STL");
    } else {
      assertThat(said).isEmpty();
    }
  }
}
