package org.seamwright.section;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.TreeMap;
import org.seamwright.mesh.EdgeRings;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Joins small pieces to the neighbour that they share the longest border with, the smallest first,
 * until none is small or has a neighbour. O(n + borders · log pieces).
 */
final class SmallPieces {
  private final double leastMm2;
  private final double[] area;
  private final int[] into;
  private final List<Map<Integer, Double>> borders = new ArrayList<>();

  private record Entry(double areaMm2, int piece) {}

  private SmallPieces(Pieces pieces, double leastMm2) {
    this.leastMm2 = leastMm2;
    area = pieces.areaMm2().clone();
    into = new int[area.length];
    Arrays.setAll(into, i -> i);
    for (int i = 0; i < area.length; i++) {
      borders.add(new TreeMap<>());
    }
  }

  /**
   * Joins.
   *
   * @param pieces connected pieces
   * @param leastMm2 area below which a piece is small
   * @return one entry per face: its piece, numbered without gaps by first face, or -1
   */
  static int[] join(Mesh mesh, EdgeRings rings, Pieces pieces, double leastMm2) {
    SmallPieces small = new SmallPieces(pieces, leastMm2);
    small.findBorders(mesh, rings, pieces);
    small.run();
    int[] joined = new int[pieces.of().length];
    int[] number = new int[small.into.length];
    Arrays.fill(number, Pieces.NONE);
    int count = 0;
    for (int f = 0; f < joined.length; f++) {
      int piece = pieces.of()[f];
      if (piece < 0) {
        joined[f] = Pieces.NONE;
        continue;
      }
      int top = small.top(piece);
      if (number[top] < 0) {
        number[top] = count++;
      }
      joined[f] = number[top];
    }
    return joined;
  }

  private void findBorders(Mesh mesh, EdgeRings rings, Pieces pieces) {
    int[] corner = mesh.corner();
    for (int h = 0; h < corner.length; h++) {
      int a = pieces.of()[h / 3];
      if (a < 0) {
        continue;
      }
      for (int g = rings.next(h); g != h; g = rings.next(g)) {
        int b = pieces.of()[g / 3];
        if (b >= 0 && b != a) {
          double length = Faces.length(mesh, corner[h], corner[Topology.next(h)]);
          borders.get(a).merge(b, length, Double::sum);
        }
      }
    }
  }

  private void run() {
    PriorityQueue<Entry> queue =
        new PriorityQueue<>(
            Comparator.comparingDouble(Entry::areaMm2).thenComparingInt(Entry::piece));
    for (int i = 0; i < area.length; i++) {
      if (area[i] < leastMm2) {
        queue.add(new Entry(area[i], i));
      }
    }
    while (!queue.isEmpty()) {
      Entry entry = queue.remove();
      int piece = entry.piece();
      if (into[piece] != piece || area[piece] != entry.areaMm2()) {
        continue;
      }
      int neighbour = longest(piece);
      if (neighbour >= 0) {
        merge(piece, neighbour);
        if (area[neighbour] < leastMm2) {
          queue.add(new Entry(area[neighbour], neighbour));
        }
      }
    }
  }

  private int longest(int piece) {
    int best = -1;
    double most = 0;
    for (Map.Entry<Integer, Double> border : borders.get(piece).entrySet()) {
      if (border.getValue() > most) {
        most = border.getValue();
        best = border.getKey();
      }
    }
    return best;
  }

  private void merge(int piece, int neighbour) {
    into[piece] = neighbour;
    area[neighbour] += area[piece];
    Map<Integer, Double> own = borders.get(neighbour);
    own.remove(piece);
    borders
        .get(piece)
        .forEach(
            (other, length) -> {
              if (other != neighbour) {
                own.merge(other, length, Double::sum);
                Map<Integer, Double> theirs = borders.get(other);
                theirs.remove(piece);
                theirs.merge(neighbour, length, Double::sum);
              }
            });
    borders.get(piece).clear();
  }

  private int top(int piece) {
    int top = piece;
    while (into[top] != top) {
      into[top] = into[into[top]];
      top = into[top];
    }
    return top;
  }
}
