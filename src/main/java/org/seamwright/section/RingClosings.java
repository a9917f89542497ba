package org.seamwright.section;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;

/**
 * Finds the sections that close a ring.
 *
 * <p>A section touches the sections worked before it along lines. If two of these lines lie apart
 * and lead to sections that are joined with each other already, working the section closes a ring.
 * Lines count as one where they share a vertex, or come nearer to each other than half the side of
 * a square as large as the section: a bare letter or screw hole in the middle of a seam makes no
 * ring.
 *
 * <p>Cost: O(seam edges), and for each section the product of the lengths of its lines.
 */
final class RingClosings {
  /** How far apart two ends of a section lie at least, in sides of a square of its area. */
  private static final double APART = 0.5;

  private RingClosings() {}

  /**
   * Rings that an order of work closes, by section.
   *
   * @param seams seams between ids in working order from 1
   * @param netMm2 by id: area of each section; entry 0 is not used
   */
  static List<RingClosing> of(Mesh mesh, SeamLines seams, double[] netMm2) {
    int sections = netMm2.length - 1;
    int[] joined = new int[sections + 1];
    Arrays.setAll(joined, i -> i);
    List<List<Integer>> edges = new ArrayList<>();
    for (int id = 0; id <= sections; id++) {
      edges.add(new ArrayList<>());
    }
    for (int i = 0; i < seams.pair().length; i++) {
      edges.get(seams.pairs().high()[seams.pair()[i]]).add(i);
    }
    List<RingClosing> rings = new ArrayList<>();
    for (int id = 1; id <= sections; id++) {
      List<Contact> contacts = contacts(mesh, seams, edges.get(id), joined);
      merge(mesh, contacts, APART * Math.sqrt(netMm2[id]));
      int[] onto = ends(contacts);
      if (onto.length > 0) {
        rings.add(new RingClosing(id, Arrays.stream(onto).boxed().toList()));
      }
      for (int i : edges.get(id)) {
        joined[root(joined, seams.pairs().low()[seams.pair()[i]])] = root(joined, id);
      }
    }
    return rings;
  }

  /** Lines that hang together, along which a section touches earlier ones. */
  private static final class Contact {
    final List<Integer> vertices = new ArrayList<>();
    final List<Integer> sections = new ArrayList<>();

    /** Names of the connected worked areas that it leads to. */
    final List<Integer> areas = new ArrayList<>();

    void add(Contact other) {
      vertices.addAll(other.vertices);
      other.sections.stream().filter(s -> !sections.contains(s)).forEach(sections::add);
      other.areas.stream().filter(a -> !areas.contains(a)).forEach(areas::add);
    }
  }

  private static List<Contact> contacts(
      Mesh mesh, SeamLines seams, List<Integer> edges, int[] joined) {
    int[] ends = new int[2 * edges.size()];
    for (int i = 0; i < edges.size(); i++) {
      int h = seams.halfEdge()[edges.get(i)];
      ends[2 * i] = mesh.corner()[h];
      ends[2 * i + 1] = mesh.corner()[Topology.next(h)];
    }
    int[] vertex = Arrays.stream(ends).sorted().distinct().toArray();
    int[] line = new int[vertex.length];
    Arrays.setAll(line, i -> i);
    for (int i = 0; i < ends.length; i += 2) {
      int a = root(line, Arrays.binarySearch(vertex, ends[i]));
      int b = root(line, Arrays.binarySearch(vertex, ends[i + 1]));
      // The lower root stays, so that lines come in the order of their vertices.
      line[Math.max(a, b)] = Math.min(a, b);
    }
    Contact[] byRoot = new Contact[vertex.length];
    List<Contact> contacts = new ArrayList<>();
    for (int i = 0; i < vertex.length; i++) {
      int r = root(line, i);
      if (byRoot[r] == null) {
        byRoot[r] = new Contact();
        contacts.add(byRoot[r]);
      }
      byRoot[r].vertices.add(vertex[i]);
    }
    for (int i = 0; i < edges.size(); i++) {
      Contact contact = byRoot[root(line, Arrays.binarySearch(vertex, ends[2 * i]))];
      int earlier = seams.pairs().low()[seams.pair()[edges.get(i)]];
      if (!contact.sections.contains(earlier)) {
        contact.sections.add(earlier);
      }
      if (!contact.areas.contains(root(joined, earlier))) {
        contact.areas.add(root(joined, earlier));
      }
    }
    return contacts;
  }

  private static int root(int[] parent, int i) {
    int r = i;
    while (parent[r] != r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  }

  private static void merge(Mesh mesh, List<Contact> contacts, double apartMm) {
    for (int i = 0; i < contacts.size(); i++) {
      int j = i + 1;
      while (j < contacts.size()) {
        if (near(mesh, contacts.get(i), contacts.get(j), apartMm)) {
          contacts.get(i).add(contacts.remove(j));
          // What has grown may now be near to lines that it was apart from.
          j = i + 1;
        } else {
          j++;
        }
      }
    }
  }

  private static boolean near(Mesh mesh, Contact a, Contact b, double apartMm) {
    for (int v : a.vertices) {
      for (int w : b.vertices) {
        if (Faces.length(mesh, v, w) < apartMm) {
          return true;
        }
      }
    }
    return false;
  }

  /** Sections at the ends that lead to the same worked area; none if there is no such pair. */
  private static int[] ends(List<Contact> contacts) {
    List<Integer> onto = new ArrayList<>();
    for (Contact a : contacts) {
      boolean meets =
          contacts.stream().anyMatch(b -> b != a && b.areas.stream().anyMatch(a.areas::contains));
      if (meets) {
        onto.addAll(a.sections);
      }
    }
    return onto.stream().mapToInt(i -> i).sorted().distinct().toArray();
  }
}
