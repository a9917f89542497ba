package org.seamwright.meshfile;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.seamwright.mesh.Mesh;

/**
 * Writes a coloured mesh as binary PLY, coordinates as doubles, so that they are read back exactly.
 * Faces carry a colour and the number of their region; corners carry the colour too, for programs
 * that show no other, and are written once for each colour that meets there.
 */
public final class PlyWriter {
  private static final int VERTEX_BYTES = 3 * 8 + 3;
  private static final int FACE_BYTES = 1 + 3 * 4 + 3 + 4;

  private PlyWriter() {}

  /**
   * Writes PLY to a stream, which stays open.
   *
   * @param region one entry per face, 0 or more
   * @param rgb one entry per region, 0xRRGGBB
   * @param name what the number of a region is called in the file, such as "section"
   * @throws IOException if it can't be written
   */
  public static void write(Mesh mesh, int[] region, int[] rgb, String name, OutputStream stream)
      throws IOException {
    if (region.length != mesh.faceCount()) {
      throw new IllegalArgumentException(
          region.length + " regions for " + mesh.faceCount() + " faces");
    }
    int[] corner = new int[mesh.corner().length];
    int[] vertex = byRegion(mesh, region, corner);
    OutputStream out = new BufferedOutputStream(stream, 1 << 16);
    out.write(head(vertex.length, mesh.faceCount(), name).getBytes(StandardCharsets.US_ASCII));
    int[] colour = new int[vertex.length];
    for (int h = 0; h < corner.length; h++) {
      colour[corner[h]] = rgb[region[h / 3]];
    }
    ByteBuffer one = ByteBuffer.allocate(VERTEX_BYTES).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < vertex.length; i++) {
      one.clear();
      one.putDouble(mesh.x(vertex[i])).putDouble(mesh.y(vertex[i])).putDouble(mesh.z(vertex[i]));
      put(one, colour[i]);
      out.write(one.array(), 0, VERTEX_BYTES);
    }
    one = ByteBuffer.allocate(FACE_BYTES).order(ByteOrder.LITTLE_ENDIAN);
    for (int f = 0; f < region.length; f++) {
      one.clear();
      one.put((byte) 3);
      one.putInt(corner[3 * f]).putInt(corner[3 * f + 1]).putInt(corner[3 * f + 2]);
      put(one, rgb[region[f]]);
      one.putInt(region[f]);
      out.write(one.array(), 0, FACE_BYTES);
    }
    out.flush();
  }

  private static void put(ByteBuffer into, int rgb) {
    into.put((byte) (rgb >> 16)).put((byte) (rgb >> 8)).put((byte) rgb);
  }

  private static String head(int vertices, int faces, String name) {
    return "ply\nformat binary_little_endian 1.0\ncomment millimetres, z up\nelement vertex "
        + vertices
        + "\nproperty double x\nproperty double y\nproperty double z\n"
        + "property uchar red\nproperty uchar green\nproperty uchar blue\nelement face "
        + faces
        + "\nproperty list uchar int vertex_indices\n"
        + "property uchar red\nproperty uchar green\nproperty uchar blue\nproperty int "
        + name
        + "\nend_header\n";
  }

  /**
   * Gives each vertex of each region a number.
   *
   * @param corner receives the numbers
   * @return the vertex behind each number
   */
  private static int[] byRegion(Mesh mesh, int[] region, int[] corner) {
    // The numbers of one vertex hang together in a chain, newest first: few regions meet in one.
    int[] newest = new int[mesh.vertexCount()];
    Arrays.fill(newest, -1);
    int[] older = new int[corner.length];
    int[] regionOf = new int[corner.length];
    int[] vertex = new int[corner.length];
    int count = 0;
    for (int h = 0; h < corner.length; h++) {
      int v = mesh.corner()[h];
      int at = newest[v];
      while (at >= 0 && regionOf[at] != region[h / 3]) {
        at = older[at];
      }
      if (at < 0) {
        at = count++;
        older[at] = newest[v];
        newest[v] = at;
        regionOf[at] = region[h / 3];
        vertex[at] = v;
      }
      corner[h] = at;
    }
    return Arrays.copyOf(vertex, count);
  }
}
