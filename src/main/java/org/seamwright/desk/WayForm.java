package org.seamwright.desk;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.job.Job;
import org.seamwright.section.SectionAxis;
import org.seamwright.section.SectionChoices;
import org.seamwright.section.SectionWay;

/** The way sections are made, as it is chosen. */
public final class WayForm {
  /** Creases that bound natural faces unless the job says otherwise, degrees. */
  private static final double CREASE_DEGREES = 40;

  private WayForm() {}

  /** The ways. */
  public enum Way {
    /** As the limit and short seams ask for. */
    AUTOMATIC,
    /** Rings about the axis. */
    RINGS,
    /** Sectors about the axis. */
    SECTORS,
    /** Strips from left to right. */
    STRIPS_X,
    /** Strips from front to back. */
    STRIPS_Y,
    /** Strips from bottom to top. */
    STRIPS_Z,
    /** Natural faces. */
    FACES,
    /** Another one, which the job file tells. */
    OTHER;

    /** Its name. */
    public String title() {
      return Messages.text("way." + name().toLowerCase(Locale.ROOT));
    }

    /** Whether it has a number of parts. */
    public boolean counts() {
      return switch (this) {
        case RINGS, SECTORS, STRIPS_X, STRIPS_Y, STRIPS_Z -> true;
        default -> false;
      };
    }
  }

  /** The way of a job. */
  public static Way of(Job job) {
    SectionChoices choices = job.sections().choices();
    if (choices.symmetry().isPresent()) {
      return Way.OTHER;
    }
    if (choices.way().isEmpty()) {
      return Way.AUTOMATIC;
    }
    for (Way way : Way.values()) {
      if (made(way, count(job)).equals(choices.way())) {
        return way;
      }
    }
    return Way.OTHER;
  }

  /** The number of parts; 0 for as many as the limit needs. */
  public static int count(Job job) {
    SectionWay way = job.sections().choices().way().orElse(null);
    return way instanceof SectionWay.Rings rings
        ? rings.count()
        : way instanceof SectionWay.Sectors sectors
            ? sectors.count()
            : way instanceof SectionWay.Strips strips ? strips.count() : 0;
  }

  private static Optional<SectionWay> made(Way way, int count) {
    return switch (way) {
      case RINGS ->
          Optional.of(
              new SectionWay.Rings(SectionAxis.FOUND, SectionWay.By.HEIGHT, count, List.of()));
      case SECTORS -> Optional.of(new SectionWay.Sectors(SectionAxis.FOUND, Math.max(2, count)));
      case STRIPS_X -> Optional.of(new SectionWay.Strips(Vector3D.Unit.PLUS_X, count));
      case STRIPS_Y -> Optional.of(new SectionWay.Strips(Vector3D.Unit.PLUS_Y, count));
      case STRIPS_Z -> Optional.of(new SectionWay.Strips(Vector3D.Unit.PLUS_Z, count));
      case FACES -> Optional.of(new SectionWay.NaturalFaces(CREASE_DEGREES));
      case AUTOMATIC, OTHER -> Optional.empty();
    };
  }

  /** The job with another way, or another number of parts; what was changed by hand stays. */
  public static Job with(Job job, Way way, int count) {
    if (way == Way.OTHER || (way == of(job) && count == count(job))) {
      return job;
    }
    SectionChoices choices = job.sections().choices();
    return job.withSections(
        job.sections()
            .withChoices(new SectionChoices(made(way, count), Optional.empty(), choices.edits())));
  }
}
