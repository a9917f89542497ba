package org.seamwright.section;

import java.util.Arrays;
import java.util.Random;

/**
 * Places that seams may run between: nodes with an area, joined where they meet, with what a seam
 * there costs. Symmetric: every border stands with both of its nodes.
 *
 * @param areaMm2 one entry per node
 * @param begin one entry per node and one more: its first border
 * @param neighbour one entry per border: the node on its other side
 * @param costMm one entry per border: length times cost of a seam along it
 * @param lengthMm one entry per border: the length
 */
record PatchGraph(
    double[] areaMm2, int[] begin, int[] neighbour, double[] costMm, double[] lengthMm) {
  /** Number of nodes. */
  int count() {
    return areaMm2.length;
  }

  /**
   * Pairs nodes, each with the neighbour it has the dearest border with for their areas (the rating
   * of M. Holtgrewe, P. Sanders and C. Schulz, "Engineering a scalable high quality graph
   * partitioner", 2010), so that what is cheap to cut stays between pairs.
   *
   * @param mostMm2 largest area of a pair
   * @param apart one entry per node in each: nodes of different entries are never paired
   * @return one entry per node: its pair's number; pairs are numbered without gaps
   */
  int[] paired(double mostMm2, int[][] apart, Random random) {
    int[] order = new int[count()];
    Arrays.setAll(order, i -> i);
    for (int i = order.length - 1; i > 0; i--) {
      int j = random.nextInt(i + 1);
      int swap = order[i];
      order[i] = order[j];
      order[j] = swap;
    }
    int[] pair = new int[count()];
    Arrays.fill(pair, -1);
    int pairs = 0;
    for (int p : order) {
      if (pair[p] < 0) {
        int with = partner(p, pair, mostMm2, apart);
        pair[p] = pairs;
        if (with >= 0) {
          pair[with] = pairs;
        }
        pairs++;
      }
    }
    return pair;
  }

  private int partner(int p, int[] pair, double mostMm2, int[][] apart) {
    int best = -1;
    double most = 0;
    for (int i = begin[p]; i < begin[p + 1]; i++) {
      int q = neighbour[i];
      if (pair[q] < 0 && areaMm2[p] + areaMm2[q] <= mostMm2 && together(p, q, apart)) {
        double rating =
            costMm[i] * costMm[i] / Math.max(Double.MIN_NORMAL, areaMm2[p] * areaMm2[q]);
        if (rating > most) {
          most = rating;
          best = q;
        }
      }
    }
    return best;
  }

  private static boolean together(int p, int q, int[][] apart) {
    for (int[] label : apart) {
      if (label[p] != label[q]) {
        return false;
      }
    }
    return true;
  }

  /**
   * Joins nodes.
   *
   * @param to one entry per node: the joint node's number
   * @param joint number of joint nodes
   */
  PatchGraph joined(int[] to, int joint) {
    double[] area = new double[joint];
    int[] from = new int[joint + 1];
    for (int p = 0; p < to.length; p++) {
      area[to[p]] += areaMm2[p];
      from[to[p] + 1]++;
    }
    for (int p = 0; p < joint; p++) {
      from[p + 1] += from[p];
    }
    int[] member = new int[to.length];
    int[] fill = Arrays.copyOf(from, joint);
    for (int p = 0; p < to.length; p++) {
      member[fill[to[p]]++] = p;
    }
    int[] newBegin = new int[joint + 1];
    int[] newNeighbour = new int[neighbour.length];
    double[] newCost = new double[neighbour.length];
    double[] newLength = new double[neighbour.length];
    int[] at = new int[joint];
    Arrays.fill(at, -1);
    int count = 0;
    for (int p = 0; p < joint; p++) {
      int start = count;
      for (int m = from[p]; m < from[p + 1]; m++) {
        for (int i = begin[member[m]]; i < begin[member[m] + 1]; i++) {
          int q = to[neighbour[i]];
          if (q == p) {
            continue;
          }
          if (at[q] < start) {
            at[q] = count;
            newNeighbour[count++] = q;
          }
          newCost[at[q]] += costMm[i];
          newLength[at[q]] += lengthMm[i];
        }
      }
      newBegin[p + 1] = count;
    }
    return new PatchGraph(
        area,
        newBegin,
        Arrays.copyOf(newNeighbour, count),
        Arrays.copyOf(newCost, count),
        Arrays.copyOf(newLength, count));
  }

  /**
   * Makes every label one piece: of the pieces of a label the largest stays, each other one goes to
   * the label it shares the longest border with, if there is one.
   *
   * @param label one entry per node; changed
   */
  void connect(int[] label, int labels) {
    int[] piece = new int[count()];
    Arrays.fill(piece, -1);
    int[] stack = new int[count()];
    double[] size = new double[count()];
    int[] largest = new int[labels];
    Arrays.fill(largest, -1);
    for (int from = 0; from < count(); from++) {
      if (piece[from] < 0) {
        int top = 0;
        stack[top++] = from;
        piece[from] = from;
        while (top > 0) {
          int p = stack[--top];
          size[from] += areaMm2[p];
          for (int i = begin[p]; i < begin[p + 1]; i++) {
            int q = neighbour[i];
            if (piece[q] < 0 && label[q] == label[from]) {
              piece[q] = from;
              stack[top++] = q;
            }
          }
        }
        int rival = largest[label[from]];
        largest[label[from]] = rival < 0 || size[from] > size[rival] ? from : rival;
      }
    }
    boolean again = true;
    while (again) {
      again = false;
      for (int p = 0; p < count(); p++) {
        if (piece[p] != largest[label[p]]) {
          int to = longestBorder(p, label, piece, largest);
          if (to >= 0) {
            label[p] = to;
            piece[p] = largest[to];
            again = true;
          }
        }
      }
    }
  }

  /** Label whose settled nodes a node has the longest border with; -1 if there is none. */
  private int longestBorder(int p, int[] label, int[] piece, int[] largest) {
    int best = -1;
    double longest = -1;
    for (int i = begin[p]; i < begin[p + 1]; i++) {
      int to = label[neighbour[i]];
      if (piece[neighbour[i]] == largest[to]) {
        double sum = 0;
        for (int k = begin[p]; k < begin[p + 1]; k++) {
          boolean same = label[neighbour[k]] == to && piece[neighbour[k]] == largest[to];
          sum += same ? lengthMm[k] : 0;
        }
        if (sum > longest) {
          longest = sum;
          best = to;
        }
      }
    }
    return best;
  }
}
