package org.seamwright.sample;

import java.util.BitSet;

/**
 * A profile turned about the z axis into a grid of quads, from which blocks of cells can be left
 * out so that a {@link Tube} joins there without a gap.
 *
 * <p>Row i runs between profile points i and i + 1, column j between angles j and j + 1.
 */
final class Lathe {
  /** Radii below this count as lying on the axis: far below any feature, far above rounding, mm. */
  private static final double ON_AXIS_MM = 1e-9;

  private final MeshBuilder builder;
  private final int rows;
  private final int around;
  private final boolean loop;
  private final int[][] vertex;
  private final double[][] point;
  private final BitSet removed = new BitSet();

  /**
   * Places the vertices.
   *
   * @param builder receives them
   * @param point profile points (r, z), mm
   * @param loop whether the last point joins the first; it must not repeat it
   * @param around columns
   */
  Lathe(MeshBuilder builder, double[][] point, boolean loop, int around) {
    this.builder = builder;
    this.point = point;
    this.loop = loop;
    this.around = around;
    rows = loop ? point.length : point.length - 1;
    vertex = new int[point.length][around];
    for (int i = 0; i < point.length; i++) {
      boolean pole = point[i][0] < ON_AXIS_MM;
      for (int j = 0; j < around; j++) {
        double angle = 2 * Math.PI * j / around;
        vertex[i][j] =
            pole && j > 0
                ? vertex[i][0]
                : builder.vertex(
                    pole ? 0 : point[i][0] * Math.cos(angle),
                    pole ? 0 : point[i][0] * Math.sin(angle),
                    point[i][1]);
      }
    }
  }

  /** The profile point nearest to a place in the half plane. */
  int nearestPoint(double r, double z) {
    int best = 0;
    for (int i = 1; i < point.length; i++) {
      if (Math.hypot(point[i][0] - r, point[i][1] - z)
          < Math.hypot(point[best][0] - r, point[best][1] - z)) {
        best = i;
      }
    }
    return best;
  }

  /**
   * Leaves out a block of cells and gives its outline, counter-clockwise seen from outside.
   *
   * @param firstRow first row of the block
   * @param rowCount rows in it
   * @param firstColumn first column; may be negative
   * @param columnCount columns in it
   */
  int[] open(int firstRow, int rowCount, int firstColumn, int columnCount) {
    for (int i = firstRow; i < firstRow + rowCount; i++) {
      for (int j = firstColumn; j < firstColumn + columnCount; j++) {
        removed.set(i * around + Math.floorMod(j, around));
      }
    }
    int[] outline = new int[2 * (rowCount + columnCount)];
    int n = 0;
    for (int j = 0; j < columnCount; j++) {
      outline[n++] = at(firstRow, firstColumn + j);
    }
    for (int i = 0; i < rowCount; i++) {
      outline[n++] = at(firstRow + i, firstColumn + columnCount);
    }
    for (int j = columnCount; j > 0; j--) {
      outline[n++] = at(firstRow + rowCount, firstColumn + j);
    }
    for (int i = rowCount; i > 0; i--) {
      outline[n++] = at(firstRow + i, firstColumn);
    }
    return outline;
  }

  /** Vertex at a profile point and angle. */
  int at(int i, int j) {
    return vertex[loop ? Math.floorMod(i, point.length) : i][Math.floorMod(j, around)];
  }

  /** Adds the faces of all cells that were not left out. */
  void close() {
    for (int i = 0; i < rows; i++) {
      for (int j = 0; j < around; j++) {
        if (!removed.get(i * around + j)) {
          builder.face(at(i, j), at(i, j + 1), at(i + 1, j));
          builder.face(at(i, j + 1), at(i + 1, j + 1), at(i + 1, j));
        }
      }
    }
  }
}
