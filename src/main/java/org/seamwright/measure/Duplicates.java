package org.seamwright.measure;

import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/** Counts faces that repeat the three vertices of an earlier one, turned either way. O(n). */
final class Duplicates {
  private Duplicates() {}

  static int count(Mesh mesh, Topology topology) {
    int suspects = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      suspects += isSuspect(topology, f) ? 1 : 0;
    }
    if (suspects < 2) {
      return 0;
    }
    int bits = 33 - Integer.numberOfLeadingZeros(suspects);
    int[] slot = new int[1 << bits];
    int mask = slot.length - 1;
    int count = 0;
    int[] key = new int[3];
    int[] other = new int[3];
    for (int f = 0; f < mesh.faceCount(); f++) {
      if (isSuspect(topology, f)) {
        sorted(mesh, f, key);
        int i = hash(key) >>> (32 - bits);
        while (slot[i] != 0 && !same(mesh, slot[i] - 1, key, other)) {
          i = (i + 1) & mask;
        }
        if (slot[i] == 0) {
          slot[i] = f + 1;
        } else {
          count++;
        }
      }
    }
    return count;
  }

  /** A repeated face shares all its edges: with one other face, or with more than one. */
  private static boolean isSuspect(Topology topology, int f) {
    int across = topology.faceAcross(3 * f);
    return topology.twin(3 * f) == Topology.BRANCHING
        || topology.twin(3 * f + 1) == Topology.BRANCHING
        || topology.twin(3 * f + 2) == Topology.BRANCHING
        || (across >= 0
            && across == topology.faceAcross(3 * f + 1)
            && across == topology.faceAcross(3 * f + 2));
  }

  private static void sorted(Mesh mesh, int f, int[] into) {
    int a = mesh.corner()[3 * f];
    int b = mesh.corner()[3 * f + 1];
    int c = mesh.corner()[3 * f + 2];
    into[0] = Math.min(a, Math.min(b, c));
    into[2] = Math.max(a, Math.max(b, c));
    into[1] = a + b + c - into[0] - into[2];
  }

  private static int hash(int[] key) {
    int h = key[0] * 0x9E3779B9;
    h = (h ^ (h >>> 15) ^ key[1]) * 0x85EBCA6B;
    h = (h ^ (h >>> 13) ^ key[2]) * 0xC2B2AE35;
    return (h ^ (h >>> 16)) * 0x9E3779B9;
  }

  private static boolean same(Mesh mesh, int f, int[] key, int[] other) {
    sorted(mesh, f, other);
    return other[0] == key[0] && other[1] == key[1] && other[2] == key[2];
  }
}
