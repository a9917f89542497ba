package org.seamwright.job;

import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.region.Mark;
import org.seamwright.region.Treatment;
import org.seamwright.units.LengthUnit;

/** How marks are spelled that go by another body: one from a file, a tip, an outer shell. */
final class BodyMarkKinds {
  private BodyMarkKinds() {}

  static void add(Map<String, MarkKind<?>> all) {
    all.put(
        "inside",
        MarkKind.place(
                Mark.Inside.class,
                (head, keys) ->
                    new Mark.Inside(
                        head.name(),
                        head.treatment(),
                        new Mark.Body(
                            keys.get("file", JobReader::meshFile),
                            keys.get("unit", "", n -> n.oneOf(units())),
                            keys.get("sha256", "", JobReader::digest),
                            keys.get("axis", Vector3D.Unit.PLUS_Z, JobNode::direction),
                            keys.get("turn", 0.0, n -> n.number(Range.ANY)),
                            keys.get("move", Vector3D.ZERO, JobNode::point))))
            .key("file", m -> m.body().file())
            .key("sha256", m -> m.body().sha256())
            .key("unit", m -> m.body().unit().isEmpty() ? JobKeys.OF_FILE : m.body().unit())
            .vector("axis", m -> m.body().axis())
            .key("turn", m -> m.body().turnDegrees())
            .vector("move", m -> m.body().move()));
    all.put(
        "outOfReach",
        MarkKind.place(
                Mark.OutOfReach.class,
                (head, keys) ->
                    new Mark.OutOfReach(
                        head.name(), head.treatment(), keys.get("radius", MarkKinds::length)))
            .usually(Treatment.OUT_OF_SCOPE)
            .length("radius", Mark.OutOfReach::radiusMm));
    all.put(
        "innerShells",
        MarkKind.place(
                Mark.InnerShells.class,
                (head, keys) -> new Mark.InnerShells(head.name(), head.treatment()))
            .usually(Treatment.OUT_OF_SCOPE));
  }

  private static Map<String, String> units() {
    Map<String, String> units = new LinkedHashMap<>();
    for (LengthUnit unit : LengthUnit.values()) {
      units.put(unit.symbol(), unit.symbol());
    }
    units.put(JobKeys.OF_FILE, "");
    return units;
  }
}
