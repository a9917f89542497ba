package org.seamwright.job;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamwright.region.Treatment;
import org.seamwright.section.SectionWay;
import org.seamwright.units.UnitSystem;

/** The spelling of the job file, version 1: every key and every word that stands for a choice. */
final class JobKeys {
  /** The unit of a mesh file that says its own. */
  static final String OF_FILE = "file";

  /** The axis that the piece shows by its shape. */
  static final String FOUND = "found";

  static final String VERSION = "seamwright";

  static final List<String> JOB =
      List.of(
          VERSION,
          "piece",
          "note",
          "display",
          "mesh",
          "cleaning",
          "ground",
          "marks",
          "sections",
          "plating",
          "masking",
          "quote");
  static final List<String> MESH = List.of("file", "sha256", "surface", "unit", "knownLength");
  static final List<String> SURFACE = List.of("area", "samples");
  static final List<String> KNOWN_LENGTH = List.of("length", "along");
  static final List<String> SECTIONS =
      List.of(
          "limit",
          "wetWindow",
          "activationLap",
          "flashLap",
          "order",
          "seams",
          "way",
          "symmetry",
          "edits");
  static final List<String> SYMMETRY = List.of("point", "axis", "zero", "count");

  /** Keys of each way of making sections, in the order they are written. */
  static final Map<String, List<String>> WAYS =
      ordered(
          Map.entry("rings", List.of("kind", "point", "axis", "by", "count", "at")),
          Map.entry("sectors", List.of("kind", "point", "axis", "zero", "count")),
          Map.entry(
              "ringsAndSectors",
              List.of("kind", "point", "axis", "zero", "by", "count", "at", "sectors")),
          Map.entry("strips", List.of("kind", "direction", "count")),
          Map.entry("naturalFaces", List.of("kind", "angle")));

  static final Map<String, SectionWay.By> RINGS_BY =
      ordered(Map.entry("height", SectionWay.By.HEIGHT), Map.entry("radius", SectionWay.By.RADIUS));

  /** Keys of each edit of sections, in the order they are written. */
  static final Map<String, List<String>> SECTION_EDITS =
      ordered(
          Map.entry("merge", List.of("kind", "points")),
          Map.entry("split", List.of("kind", "point", "path", "parts")),
          Map.entry("moveSeam", List.of("kind", "between", "path")),
          Map.entry("pin", List.of("kind", "path")),
          Map.entry("rename", List.of("kind", "point", "name")),
          Map.entry("renumber", List.of("kind", "point", "number")));

  static final List<String> SEAMS =
      List.of("crease", "valley", "hidden", "show", "showFaces", "rings");
  static final List<String> ORDER = List.of("first", "last", "before");
  static final List<String> BEFORE = List.of("section", "before");
  static final List<String> PLATING =
      List.of(
          "recipe",
          "deposit",
          "flash",
          "thickness",
          "loss",
          "solution",
          "usable",
          "secondsPerCm2PerUm",
          "efficiency",
          "tool",
          "hold",
          "bench",
          "sheet");
  static final List<String> SHEET =
      List.of("name", "form", "fromVolts", "toVolts", "anode", "keep");
  static final List<String> BENCH =
      List.of(
          "handling",
          "secondsPerCm2",
          "rinseHandling",
          "rinseSecondsPerCm2",
          "flashPasses",
          "steps");
  static final List<String> BENCH_STEP = List.of("step", "handling", "secondsPerCm2", "passes");
  static final List<String> SPREAD = List.of("low", "likely", "high");
  static final List<String> TOOL = List.of("dip", "contact", "amperesPerCm2", "ampHoursPerLitre");
  static final List<String> HOLD = List.of("up", "steeper");
  static final List<String> RECIPE = List.of("id", "base", "copper", "steps", "notes");
  static final List<String> STEP =
      List.of(
          "name",
          "purpose",
          "kind",
          "volts",
          "polarity",
          "secondsPerCm2",
          "passes",
          "handling",
          "done",
          "wrong",
          "caution",
          "source");
  static final List<String> QUOTE =
      List.of(
          "currency",
          "labourPerHour",
          "extraTime",
          "metalPerGram",
          "tapePerMetre",
          "lacquerPerLitre",
          "materials",
          "overhead",
          "margin",
          "minimum",
          "tax",
          "validDays",
          "onCustomerSheet");
  static final List<String> MASKING =
      List.of(
          "tapeWidth",
          "tapeOverlap",
          "tapeRoll",
          "tapes",
          "splash",
          "lacquerSolids",
          "lacquerDry",
          "lacquerCoats",
          "lacquerLoss",
          "dip",
          "pace");
  static final List<String> DIP =
      List.of("up", "depth", "vessel", "drainLoss", "leftLoss", "perCoat", "peelPerCm2");
  static final List<String> TAPE =
      List.of("name", "width", "bend", "roll", "price", "stretch", "resists");
  static final List<String> MASK_PACE =
      List.of("tapePerMetre", "perPiece", "lacquerPerCm2", "dryPerCoat");

  /** Keys of each kind of cleaning step, in the order they are written. */
  static final Map<String, List<String>> REPAIRS =
      ordered(
          Map.entry("keepParts", List.of("kind", "points")),
          Map.entry("keepLargest", List.of("kind", "count")),
          Map.entry("keepAbove", List.of("kind", "share")),
          Map.entry("cutTable", List.of("kind", "point", "clearance")),
          Map.entry("cutBelow", List.of("kind", "point", "normal")),
          Map.entry("dropFaulty", List.of("kind")),
          Map.entry("turnOutward", List.of("kind")),
          Map.entry("fillHoles", List.of("kind", "around")),
          Map.entry("dropInner", List.of("kind")),
          Map.entry("dropHidden", List.of("kind")),
          Map.entry("weld", List.of("kind", "tolerance")),
          Map.entry("splitEdges", List.of("kind", "tolerance")));

  static final Map<String, Treatment> TREATMENTS =
      ordered(
          Map.entry("plate", Treatment.PLATE),
          Map.entry("bare", Treatment.BARE),
          Map.entry("outOfScope", Treatment.OUT_OF_SCOPE));

  static final Map<String, UnitSystem> DISPLAYS =
      ordered(Map.entry("metric", UnitSystem.METRIC), Map.entry("inch", UnitSystem.INCH));

  static final Map<String, Job.Along> ALONGS =
      ordered(
          Map.entry("x", Job.Along.X),
          Map.entry("y", Job.Along.Y),
          Map.entry("z", Job.Along.Z),
          Map.entry("longest", Job.Along.LONGEST));

  private JobKeys() {}

  /** The word that stands for a choice. */
  static <T> String word(Map<String, T> words, T choice) {
    return words.entrySet().stream()
        .filter(e -> e.getValue().equals(choice))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElseThrow();
  }

  @SafeVarargs
  private static <T> Map<String, T> ordered(Map.Entry<String, T>... entries) {
    Map<String, T> map = new LinkedHashMap<>();
    for (Map.Entry<String, T> entry : entries) {
      map.put(entry.getKey(), entry.getValue());
    }
    return Collections.unmodifiableMap(map);
  }
}
