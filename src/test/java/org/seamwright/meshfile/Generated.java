package org.seamwright.meshfile;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Random;
import org.seamwright.mesh.Mesh;
import org.seamwright.testsupport.Shapes;

/**
 * Sound STL and OBJ files of random make: every layout, spelling and form of number that the
 * formats allow, so that damage falls on more than one writer's habits. The seed decides all of it.
 */
final class Generated {
  private static final String[] LINE_ENDS = {"\n", "\r\n", "\r", " \n\n"};
  private static final String[] GAPS = {" ", "  ", "\t", " \t "};

  private final Random random;
  private final String lineEnd;
  private final boolean upper;
  private final StringBuilder out = new StringBuilder();

  private Generated(Random random) {
    this.random = random;
    this.lineEnd = LINE_ENDS[random.nextInt(LINE_ENDS.length)];
    this.upper = random.nextInt(4) == 0;
  }

  /** A file of a format, or null for one that has no generator. */
  static byte[] of(String format, Random random) {
    return switch (format) {
      case "binary.stl" -> binary(random);
      case "text.stl" -> new Generated(random).stl();
      case "mesh.obj" -> new Generated(random).obj();
      default -> null;
    };
  }

  static Mesh mesh(Random random) {
    Mesh mesh =
        switch (random.nextInt(4)) {
          case 0 -> Shapes.cube(2, 1 + random.nextInt(3));
          case 1 -> Shapes.cylinder(2, 3, 3 + random.nextInt(6), 1, random.nextBoolean());
          case 2 -> Shapes.soup(1 + random.nextInt(20), 5, 1, random.nextLong());
          default -> Shapes.icosphere(3, random.nextInt(2));
        };
    return random.nextInt(5) == 0 ? Shapes.withRepeated(mesh, 0) : mesh;
  }

  /** One or more bodies, headers of any text, colour bits or none. */
  private static byte[] binary(Random random) {
    byte[] file = {};
    for (int bodies = random.nextInt(4) == 0 ? 2 + random.nextInt(2) : 1; bodies > 0; bodies--) {
      byte[] body = Bytes.stl(mesh(random));
      if (random.nextBoolean()) {
        System.arraycopy(Bytes.text("solid x\nfacet normal"), 0, body, 0, 20);
      }
      for (int at = 132; at < body.length && random.nextInt(3) == 0; at += 50) {
        body[at] = (byte) random.nextInt(256);
      }
      file = Bytes.join(file, body);
    }
    return file;
  }

  private byte[] stl() {
    for (int solids = 1 + random.nextInt(3); solids > 0; solids--) {
      String name = random.nextBoolean() ? " part " + solids : "";
      word("solid" + name).end();
      Mesh mesh = mesh(random);
      for (int f = 0; f < mesh.faceCount(); f++) {
        word("facet").gap().word("normal").point(0, 0, 1).end();
        word("outer").gap().word("loop").end();
        for (int k = 0; k < 3; k++) {
          int v = mesh.corner()[3 * f + k];
          word("vertex").point(mesh.x(v), mesh.y(v), mesh.z(v)).end();
        }
        word("endloop").end();
        word("endfacet").end();
      }
      word("endsolid" + (random.nextBoolean() ? name : "")).end();
    }
    return bytes();
  }

  private byte[] obj() {
    int points = 0;
    for (int bodies = 1 + random.nextInt(3); bodies > 0; bodies--) {
      Mesh mesh = mesh(random);
      int extra = random.nextInt(4);
      odd();
      for (int v = 0; v < mesh.vertexCount(); v++) {
        out.append('v');
        point(mesh.x(v), mesh.y(v), mesh.z(v));
        for (int k = 0; k < extra; k++) {
          gap().number(random.nextInt(5) / 4.0);
        }
        end();
      }
      for (int f = 0; f < mesh.faceCount(); f++) {
        if (random.nextInt(8) == 0) {
          odd();
        }
        out.append('f');
        int corners = random.nextInt(6) == 0 ? 3 + random.nextInt(5) : 3;
        for (int k = 0; k < corners; k++) {
          int v = k < 3 ? mesh.corner()[3 * f + k] : random.nextInt(mesh.vertexCount());
          boolean back = random.nextInt(4) == 0;
          out.append(random.nextInt(20) == 0 ? " \\" + lineEnd.strip() + "\n" : "");
          gap();
          out.append(back ? v - mesh.vertexCount() : points + v + 1);
          out.append(new String[] {"", "/1", "//2", "/1/2", "/-1/-1"}[random.nextInt(5)]);
        }
        end();
      }
      points += mesh.vertexCount();
    }
    return bytes();
  }

  /** A line other than of points and faces. */
  private void odd() {
    String[] lines = {
      "# made",
      "o body",
      "g a b c",
      "g",
      "usemtl brass",
      "s 1",
      "s off",
      "mtllib x.mtl",
      "vt 0 1",
      "vn 0 0 1",
      "l 1 2",
      "p 1",
      "",
      "bevel on",
      "newword 3",
      "vp 1 2 3"
    };
    out.append(lines[random.nextInt(lines.length)]);
    end();
  }

  private Generated word(String word) {
    out.append(upper ? word.toUpperCase(Locale.ROOT) : word);
    return this;
  }

  private Generated gap() {
    out.append(GAPS[random.nextInt(GAPS.length)]);
    return this;
  }

  private void end() {
    out.append(lineEnd);
  }

  private Generated point(double x, double y, double z) {
    return gap().number(x).gap().number(y).gap().number(z);
  }

  private Generated number(double value) {
    out.append(
        switch (random.nextInt(6)) {
          case 0 -> String.format(Locale.ROOT, "%.6f", value);
          case 1 -> String.format(Locale.ROOT, "%+.4E", value);
          case 2 -> String.format(Locale.ROOT, "%.8e", value).replace('e', 'd');
          case 3 -> String.format(Locale.ROOT, "%.18g", value);
          case 4 -> Double.toString(value).replaceFirst("^(-?)0[.]", "$1.");
          default -> Float.toString((float) value);
        });
    return this;
  }

  private byte[] bytes() {
    return out.toString().getBytes(StandardCharsets.UTF_8);
  }
}
