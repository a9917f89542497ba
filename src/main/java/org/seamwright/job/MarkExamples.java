package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.Map;

/** For each kind of mark: what it does in a few words, and how it is typed on a command line. */
final class MarkExamples {
  /**
   * An example.
   *
   * @param does what the kind marks, for a list of kinds
   * @param options keys and values as typed, quoted where a shell needs it
   */
  record Example(String does, String options) {}

  private static final Map<String, Example> ALL = all();

  private MarkExamples() {}

  private static Map<String, Example> all() {
    Map<String, Example> all = new LinkedHashMap<>();
    all.put(
        "halfSpace",
        new Example(
            "Everything on one side of a plane.",
            "--point 0,0,1 --normal 0,0,-1 --name underside"));
    all.put(
        "near",
        new Example(
            "Everything within a distance, along the surface, of a point or stroke.",
            "--path \"40,0,150 45,10,150\" --radius \"4 mm\" --name engraving"));
    all.put(
        "sector",
        new Example(
            "A slice about an axis.",
            "--point 0,0,0 --axis 0,0,1 --zero 1,0,0 --from 135 --to 225 --name back"));
    all.put(
        "ring",
        new Example(
            "What lies between two heights and two radii about an axis.",
            "--point 0,0,0 --axis 0,0,1 --low \"9 1/4 in\" --outer \"60 mm\" --name lip"));
    all.put(
        "box",
        new Example(
            "Everything inside a box parallel to the axes.",
            "--low -50,-5,100 --high -30,5,120 --treatment plate --name clasp"));
    all.put(
        "outline",
        new Example(
            "One side of a closed outline on the surface.",
            "--inside 0,-45,150 --path \"-10,-45,140 10,-45,140 0,-45,165\" --name crest"));
    all.put(
        "creaseFill",
        new Example(
            "Everything reached from a point without crossing a crease.",
            "--point \"0,0,5 in\" --angle 40 --name bowl"));
    all.put(
        "part",
        new Example(
            "The whole connected part nearest to a point.",
            "--point 0,0,-20 --treatment outOfScope --name stand"));
    all.put(
        "facing",
        new Example(
            "Every face that looks in a direction.",
            "--direction 0,0,-1 --angle 5 --treatment outOfScope --name undersides"));
    all.put(
        "named",
        new Example(
            "Every face with a name from the mesh file.",
            "--label base --treatment outOfScope --name \"base plate\""));
    all.put(
        "inside",
        new Example(
            "Everything inside a closed body kept in a mesh file of its own.",
            "--file plug.stl --unit mm --axis 0,0,1 --turn 30 --move 0,-60,150 --name plug"));
    all.put(
        "outOfReach",
        new Example(
            "Everything that no ball of a tip's radius can touch; out of scope if not said.",
            "--radius \"1.5 mm\" --name \"too narrow\""));
    all.put(
        "innerShells",
        new Example(
            "All parts inside a closed part; out of scope if not said.",
            "--name \"hidden walls\""));
    all.put(
        "grow",
        new Example(
            "Lets the places with a treatment so far grow.",
            "--by \"1/16 in\" --into plate --name \"room for tape\""));
    all.put(
        "smooth",
        new Example(
            "Smooths the edge of the places with a treatment so far.",
            "--radius \"2 mm\" --name \"even edge\""));
    all.put(
        "mirror",
        new Example(
            "Repeats all marks before it in a mirror.",
            "--point 0,0,0 --normal 1,0,0 --name \"other side\""));
    all.put(
        "turn",
        new Example(
            "Repeats all marks before it round an axis.",
            "--point 0,0,0 --axis 0,0,1 --count 4 --name \"four times\""));
    all.put(
        "invert",
        new Example(
            "Makes plated places bare and bare ones plated.", "--name \"the other way round\""));
    return all;
  }

  /** The example of a kind. */
  static Example of(String kind) {
    Example found = ALL.get(kind);
    if (found == null) {
      throw new IllegalStateException("No example for the kind " + kind);
    }
    return found;
  }
}
