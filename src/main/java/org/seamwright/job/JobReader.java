package org.seamwright.job;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.region.Treatment;
import org.seamwright.section.OrderPins;
import org.seamwright.section.SeamWeights;
import org.seamwright.units.LengthUnit;
import org.seamwright.units.UnitSystem;

/** Turns the tree of a job file into a {@link Job}, or refuses it. */
final class JobReader {
  private static final int DIGEST_LENGTH = 64;

  private static final int FEWEST_SAMPLES = 16;

  /** As the writer writes coordinates: no exponent, and no more digits than a double has. */
  private static final String PLAIN_NUMBER = "-?\\d{1,30}(\\.\\d{1,30})?";

  private JobReader() {}

  static Job read(JobNode root) throws JobFileException {
    checkVersion(root);
    JobNode.Keys keys = root.keys(JobKeys.JOB);
    Job.MeshSource mesh = keys.get("mesh", JobReader::mesh);
    return new Job(
        keys.get("piece", JobDefaults.piece(mesh.file()), JobNode::text),
        keys.get("note", "", JobNode::text),
        mesh,
        keys.get("cleaning", List.of(), n -> n.list(RepairReader::read)),
        keys.get("ground", Treatment.PLATE, n -> n.oneOf(JobKeys.TREATMENTS)),
        keys.get("marks", List.of(), n -> n.list(MarkKinds::read)),
        keys.get("sections", JobDefaults.sections(), JobReader::sections),
        keys.get("plating", PlatingReader::read),
        keys.get("masking", JobDefaults.masking(), MaskingJson::read),
        keys.get("quote", Optional.empty(), n -> Optional.of(QuoteJson.read(n))),
        keys.get("display", UnitSystem.METRIC, n -> n.oneOf(JobKeys.DISPLAYS)));
  }

  /** Before anything else: a newer file may well hold keys that this program does not know. */
  private static void checkVersion(JobNode root) throws JobFileException {
    if (!(root.value() instanceof JsonValue.Members members)) {
      throw root.refuse(
          "Expected a job, an object in braces, found " + root.value().kind(),
          "Check that this is a job file; the command \"new\" makes one.");
    }
    JsonValue found = members.values().get(JobKeys.VERSION);
    if (found == null) {
      throw root.refuse(
          "The key \"" + JobKeys.VERSION + "\" with the version of the format is missing",
          "If this is a job file, add \""
              + JobKeys.VERSION
              + "\": "
              + Job.VERSION
              + " at its top.");
    }
    JobNode node = new JobNode(root.source(), JobKeys.VERSION, found);
    int version = node.whole(Range.ZERO_UP);
    if (version > Job.VERSION) {
      throw node.refuse(
          "The file has version "
              + version
              + " of the format, newer than this program's "
              + Job.VERSION,
          "Open it with the program that wrote it, or a newer one.");
    }
    if (version < Job.VERSION) {
      throw node.refuse(
          "There is no version " + version + " of the format",
          "Write \"" + JobKeys.VERSION + "\": " + Job.VERSION + ".");
    }
  }

  private static Job.MeshSource mesh(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.MESH);
    keys.exactlyOne("unit", "knownLength", true);
    String file = keys.get("file", JobReader::meshFile);
    String sha256 = keys.get("sha256", "", JobReader::digest);
    Job.Scale scale =
        keys.has("knownLength")
            ? keys.get("knownLength", JobReader::knownLength)
            : keys.get("unit", new Job.Scale.OfFile(), n -> n.oneOf(units()));
    Optional<SurfaceRecord> surface =
        keys.get("surface", Optional.empty(), n -> Optional.of(surface(n)));
    return new Job.MeshSource(file, sha256, surface, scale);
  }

  /** The path of a mesh file. */
  static String meshFile(JobNode node) throws JobFileException {
    String file = node.text();
    try {
      if (file.isBlank() || Path.of(file).getNameCount() == 0) {
        throw node.refuse("The name of the mesh file is empty", "Write the file's name.");
      }
    } catch (InvalidPathException e) {
      throw node.refuse("No file can have this name", "Write the path of the mesh file.");
    }
    return file;
  }

  /** A SHA-256 digest in hex. */
  static String digest(JobNode node) throws JobFileException {
    String digest = node.text().toLowerCase(Locale.ROOT);
    if (!digest.isEmpty() && !digest.matches("[0-9a-f]{" + DIGEST_LENGTH + "}")) {
      throw node.refuse(
          "A SHA-256 digest has " + DIGEST_LENGTH + " hex digits",
          "Delete the key; the digest is recorded again when the mesh is next accepted.");
    }
    return digest;
  }

  private static SurfaceRecord surface(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.SURFACE);
    return new SurfaceRecord(
        keys.get("area", n -> n.amount(AmountKind.AREA, Range.ABOVE_ZERO)),
        keys.get("samples", JobReader::samples));
  }

  private static List<Vector3D> samples(JobNode node) throws JobFileException {
    List<Vector3D> samples = new ArrayList<>();
    for (String point : node.text().strip().split("\\s+")) {
      String[] xyz = point.split(",", -1);
      if (xyz.length != 3 || !Stream.of(xyz).allMatch(n -> n.matches(PLAIN_NUMBER))) {
        throw node.refuse(
            "\"" + point + "\" is not a place x,y,z in mm",
            "Delete the key \"surface\"; plan with --accept-mesh to record it again.");
      }
      samples.add(
          Vector3D.of(
              Double.parseDouble(xyz[0]), Double.parseDouble(xyz[1]), Double.parseDouble(xyz[2])));
    }
    if (samples.size() < FEWEST_SAMPLES) {
      throw node.refuse(
          "There are fewer than " + FEWEST_SAMPLES + " places, too few to know a piece by",
          "Delete the key \"surface\"; plan with --accept-mesh to record it again.");
    }
    return samples;
  }

  private static Map<String, Job.Scale> units() {
    Map<String, Job.Scale> units = new LinkedHashMap<>();
    for (LengthUnit unit : LengthUnit.values()) {
      units.put(unit.symbol(), new Job.Scale.Unit(unit.symbol()));
    }
    units.put(JobKeys.OF_FILE, new Job.Scale.OfFile());
    return units;
  }

  private static Job.Scale knownLength(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.KNOWN_LENGTH);
    return new Job.Scale.KnownLength(
        keys.get("length", n -> n.amount(AmountKind.LENGTH, Range.ABOVE_ZERO)),
        keys.get("along", Job.Along.LONGEST, n -> n.oneOf(JobKeys.ALONGS)));
  }

  private static Job.SectionRules sections(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.SECTIONS);
    Job.SectionRules usual = JobDefaults.sections();
    double window =
        keys.get(
            "wetWindow",
            usual.limit().windowSeconds(),
            n -> n.amount(AmountKind.TIME, Range.ABOVE_ZERO));
    Job.Limit limit =
        keys.has("limit")
            ? new Job.Limit.Area(
                keys.get("limit", n -> n.amount(AmountKind.AREA, Range.ABOVE_ZERO)), window)
            : new Job.Limit.Wet(window);
    return new Job.SectionRules(
        limit,
        keys.get("activationLap", usual.activationLapMm(), JobReader::lengthOrZero),
        keys.get("flashLap", usual.flashLapMm(), JobReader::lengthOrZero),
        keys.get("order", OrderPins.NONE, JobReader::order),
        keys.get("seams", Job.SeamRules.USUAL, JobReader::seams),
        SectionChoiceReader.read(keys));
  }

  private static Job.SeamRules seams(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.SEAMS);
    SeamWeights usual = SeamWeights.DEFAULT;
    return new Job.SeamRules(
        new SeamWeights(
            keys.get("crease", usual.crease(), n -> n.number(Range.SHARE)),
            keys.get("valley", usual.valley(), n -> n.number(Range.SHARE)),
            keys.get("hidden", usual.hidden(), n -> n.number(Range.SHARE)),
            keys.get("show", usual.show(), n -> n.number(Range.TIMES))),
        keys.get("showFaces", List.of(), n -> n.list(JobNode::text)),
        keys.get("rings", Job.SeamRules.USUAL.rings(), JobNode::yes));
  }

  private static OrderPins order(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.ORDER);
    return new OrderPins(
        keys.get("first", List.of(), n -> n.list(JobNode::point)),
        keys.get("last", List.of(), n -> n.list(JobNode::point)),
        keys.get("before", List.of(), n -> n.list(JobReader::before)));
  }

  private static OrderPins.Before before(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.BEFORE);
    return new OrderPins.Before(
        keys.get("section", JobNode::point), keys.get("before", JobNode::point));
  }

  private static double lengthOrZero(JobNode node) throws JobFileException {
    return node.amount(AmountKind.LENGTH, Range.ZERO_UP);
  }
}
