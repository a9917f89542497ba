package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.InputException;
import org.seamwright.mask.Dip;
import org.seamwright.mask.MaskPace;
import org.seamwright.mask.MaskSettings;
import org.seamwright.mask.TapeKind;
import org.seamwright.units.Amounts;
import org.seamwright.units.UnitSystem;

/** {@code masking} in the job file. */
public final class MaskingJson {
  private MaskingJson() {}

  static MaskSettings read(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.MASKING);
    MaskSettings usual = JobDefaults.masking();
    double rollMm = keys.get("tapeRoll", usual.tapeRollMm(), MaskingJson::length);
    // A written roll shorter than the usual overlap shortens that: strips must be longer than laps.
    double overlapMm =
        keys.get(
            "tapeOverlap",
            Math.min(usual.tapeOverlapMm(), rollMm / 2),
            n -> {
              double mm = lengthOrZero(n);
              if (!(mm < rollMm)) {
                throw n.refuse(
                    "The overlap of the tape is no shorter than its roll",
                    "Write an overlap below "
                        + AmountKind.LENGTH.write(rollMm, UnitSystem.METRIC)
                        + ", or a longer roll.");
              }
              return mm;
            });
    return new MaskSettings(
        keys.get("tapeWidth", usual.tapeWidthMm(), MaskingJson::length),
        overlapMm,
        rollMm,
        keys.get("splash", usual.splashMm(), MaskingJson::lengthOrZero),
        keys.get("lacquerSolids", usual.lacquerSolids(), n -> n.number(Range.SHARE)),
        keys.get("lacquerDry", usual.lacquerDryUm(), MaskingJson::thickness),
        keys.get("lacquerCoats", usual.lacquerCoats(), n -> n.whole(Range.COATS)),
        keys.get("lacquerLoss", usual.lacquerLoss(), n -> n.number(Range.LOST_PART)),
        keys.get("tapes", List.of(), n -> tapes(n, overlapMm)),
        keys.get("pace", MaskPace.USUAL, MaskingJson::pace),
        keys.get("dip", Optional.empty(), n -> Optional.of(dip(n))));
  }

  /**
   * A dip as it is typed; what is not typed stays as it was.
   *
   * @param place for messages
   * @param before what the job has
   * @param up three numbers with commas, or null
   * @param depth a length, or null for the whole piece
   * @param vessel a volume
   */
  public static Dip dip(String place, Optional<Dip> before, String up, String depth, String vessel)
      throws InputException {
    double vesselMl = above(place, "vessel", Amounts.volumeMl(vessel));
    double depthMm =
        depth == null ? Double.POSITIVE_INFINITY : above(place, "depth", Amounts.lengthMm(depth));
    Vector3D upwards =
        up == null ? before.map(Dip::up).orElse(Vector3D.Unit.PLUS_Z) : direction(place, up);
    Dip usual = before.orElseGet(() -> Dip.of(Vector3D.Unit.PLUS_Z, 1, 1));
    return new Dip(
        upwards,
        depthMm,
        vesselMl,
        usual.drainLoss(),
        usual.leftLoss(),
        usual.secondsPerCoat(),
        usual.peelSecondsPerCm2());
  }

  private static double above(String place, String what, double amount) throws InputException {
    if (!Range.ABOVE_ZERO.holds(amount)) {
      throw new InputException(
          place, what, "It " + Range.ABOVE_ZERO.words(), "Write an amount above 0.");
    }
    return amount;
  }

  private static Vector3D direction(String place, String text) throws InputException {
    String[] parts = text.split(",", -1);
    double[] number = new double[3];
    for (int i = 0; i < 3 && parts.length == 3; i++) {
      try {
        number[i] = Double.parseDouble(parts[i].strip());
      } catch (NumberFormatException e) {
        number[i] = Double.NaN;
      }
    }
    Vector3D direction = Vector3D.of(number);
    if (!(direction.norm() > 0) || Double.isInfinite(direction.norm())) {
      throw new InputException(
          place, "up", "It must be three numbers, not all 0", "Write it as 0,0,1.");
    }
    return direction;
  }

  private static Dip dip(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.DIP);
    return new Dip(
        keys.get("up", Vector3D.Unit.PLUS_Z, JobNode::direction),
        keys.get("depth", Double.POSITIVE_INFINITY, MaskingJson::length),
        keys.get("vessel", n -> n.amount(AmountKind.VOLUME, Range.ABOVE_ZERO)),
        keys.get("drainLoss", Dip.DRAIN_LOSS, n -> n.number(Range.LOST_PART)),
        keys.get("leftLoss", Dip.LEFT_LOSS, n -> n.number(Range.LOST_UP_TO_ALL)),
        keys.get("perCoat", Dip.SECONDS_PER_COAT, MaskingJson::time),
        keys.get("peelPerCm2", Dip.PEEL_SECONDS_PER_CM2, MaskingJson::time));
  }

  private static Map<String, Object> tree(Dip dip, UnitSystem display) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("up", List.of(dip.up().getX(), dip.up().getY(), dip.up().getZ()));
    if (!dip.isWhole()) {
      tree.put("depth", length(dip.depthMm(), display));
    }
    tree.put("vessel", AmountKind.VOLUME.write(dip.vesselMl(), display));
    tree.put("drainLoss", dip.drainLoss());
    tree.put("leftLoss", dip.leftLoss());
    tree.put("perCoat", AmountKind.TIME.write(dip.secondsPerCoat(), display));
    tree.put("peelPerCm2", AmountKind.TIME.write(dip.peelSecondsPerCm2(), display));
    return tree;
  }

  private static List<TapeKind> tapes(JobNode node, double overlapMm) throws JobFileException {
    List<TapeKind> tapes = node.list(n -> tape(n, overlapMm));
    for (int i = 0; i < tapes.size(); i++) {
      String name = tapes.get(i).name();
      if (tapes.subList(0, i).stream().anyMatch(t -> t.name().equals(name))) {
        throw node.refuse(
            "Two tapes are called \"" + name + "\"", "Give each tape a name of its own.");
      }
    }
    return tapes;
  }

  private static TapeKind tape(JobNode node, double overlapMm) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.TAPE);
    return new TapeKind(
        keys.get("name", JobNode::text),
        keys.get("width", MaskingJson::length),
        keys.get("bend", 0.0, MaskingJson::lengthOrZero),
        keys.get(
            "roll",
            n -> {
              double mm = length(n);
              if (!(mm > overlapMm)) {
                throw n.refuse(
                    "The roll is no longer than the overlap of its tape", "Write a longer roll.");
              }
              return mm;
            }),
        keys.get("price", 0.0, n -> n.number(Range.ZERO_UP)),
        keys.get("stretch", 0.0, n -> n.number(Range.LOST_PART)),
        keys.get("resists", "", JobNode::text));
  }

  private static MaskPace pace(JobNode node) throws JobFileException {
    JobNode.Keys keys = node.keys(JobKeys.MASK_PACE);
    MaskPace usual = MaskPace.USUAL;
    return new MaskPace(
        keys.get("tapePerMetre", usual.tapeSecondsPerMetre(), MaskingJson::time),
        keys.get("perPiece", usual.secondsPerPiece(), MaskingJson::time),
        keys.get("lacquerPerCm2", usual.lacquerSecondsPerCm2(), MaskingJson::time),
        keys.get("dryPerCoat", usual.dryMinutesPerCoat() * 60, MaskingJson::time) / 60);
  }

  private static double time(JobNode node) throws JobFileException {
    return node.amount(AmountKind.TIME, Range.ZERO_UP);
  }

  private static double length(JobNode node) throws JobFileException {
    return node.amount(AmountKind.LENGTH, Range.ABOVE_ZERO);
  }

  private static double lengthOrZero(JobNode node) throws JobFileException {
    return node.amount(AmountKind.LENGTH, Range.ZERO_UP);
  }

  private static double thickness(JobNode node) throws JobFileException {
    return node.amount(AmountKind.THICKNESS, Range.ABOVE_ZERO);
  }

  static Map<String, Object> tree(MaskSettings masking, UnitSystem display) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("tapeWidth", length(masking.tapeWidthMm(), display));
    tree.put("tapeOverlap", length(masking.tapeOverlapMm(), display));
    tree.put("tapeRoll", length(masking.tapeRollMm(), display));
    if (!masking.tapes().isEmpty()) {
      tree.put("tapes", masking.tapes().stream().map(t -> tree(t, display)).toList());
    }
    tree.put("splash", length(masking.splashMm(), display));
    tree.put("lacquerSolids", masking.lacquerSolids());
    tree.put("lacquerDry", AmountKind.THICKNESS.write(masking.lacquerDryUm(), display));
    tree.put("lacquerCoats", masking.lacquerCoats());
    tree.put("lacquerLoss", masking.lacquerLoss());
    masking.dip().ifPresent(dip -> tree.put("dip", tree(dip, display)));
    MaskPace pace = masking.pace();
    Map<String, Object> times = new LinkedHashMap<>();
    times.put("tapePerMetre", AmountKind.TIME.write(pace.tapeSecondsPerMetre(), display));
    times.put("perPiece", AmountKind.TIME.write(pace.secondsPerPiece(), display));
    times.put("lacquerPerCm2", AmountKind.TIME.write(pace.lacquerSecondsPerCm2(), display));
    times.put("dryPerCoat", AmountKind.TIME.write(pace.dryMinutesPerCoat() * 60, display));
    tree.put("pace", times);
    return tree;
  }

  private static Map<String, Object> tree(TapeKind tape, UnitSystem display) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("name", tape.name());
    tree.put("width", length(tape.widthMm(), display));
    tree.put("bend", length(tape.bendMm(), display));
    tree.put("roll", length(tape.rollMm(), display));
    tree.put("price", tape.pricePerRoll());
    tree.put("stretch", tape.stretch());
    tree.put("resists", tape.resists());
    return tree;
  }

  private static String length(double mm, UnitSystem display) {
    return AmountKind.LENGTH.write(mm, display);
  }
}
