package org.seamwright.desk;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.basis.InputException;
import org.seamwright.job.Job;
import org.seamwright.plating.Quote;
import org.seamwright.plating.QuoteRates;
import org.seamwright.plating.Tool;
import org.seamwright.units.Amounts;
import org.seamwright.units.UnitFormat;

/** What is told of the tool, of how the piece is held and of the shop's prices, as it is typed. */
public final class RateForm {
  /** From this lean on liquid runs off. Common practice, no source; the user changes it. */
  private static final double STEEP_DEGREES = 60;

  /** Days that a price holds unless the user says otherwise. Choice of this program. */
  private static final int VALID_DAYS = 30;

  private RateForm() {}

  /** Figures of the tool; each may be left empty. */
  public enum ToolField implements Typed {
    /** Solution that the sleeve takes up. */
    DIP,
    /** Area that the tool touches. */
    CONTACT,
    /** Current density on that area. */
    DENSITY,
    /** Charge that the solution can take. */
    CHARGE;

    @Override
    public String key() {
      return "tool-" + name().toLowerCase(Locale.ROOT);
    }

    @Override
    public String text(Job job) {
      Tool tool = job.plating().tool();
      UnitFormat in = new UnitFormat(job.display(), Locale.ENGLISH).withPlainSpaces();
      return switch (this) {
        case DIP -> shown(tool.dipMl(), " ml");
        case CONTACT ->
            tool.contactMm2().isPresent() ? in.area(tool.contactMm2().getAsDouble()) : "";
        case DENSITY -> shown(tool.amperesPerCm2(), "");
        case CHARGE -> shown(tool.mostAhPerL(), "");
      };
    }

    @Override
    public Job typed(Job job, String text) throws InputException {
      if (text.strip().equals(text(job))) {
        return job;
      }
      Tool t = job.plating().tool();
      OptionalDouble value =
          text.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(value(text.strip()));
      return job.withPlating(
          PlatingForm.with(
              job.plating(),
              new Tool(
                  this == DIP ? value : t.dipMl(),
                  this == CONTACT ? value : t.contactMm2(),
                  this == DENSITY ? value : t.amperesPerCm2(),
                  this == CHARGE ? value : t.mostAhPerL()),
              job.plating().hold()));
    }

    private double value(String text) throws InputException {
      double value =
          switch (this) {
            case DIP -> Amounts.volumeMl(text);
            case CONTACT -> Amounts.areaMm2(text);
            default -> number(text);
          };
      if (!(value > 0)) {
        throw refused(text, "zero");
      }
      return value;
    }
  }

  private static String shown(OptionalDouble value, String unit) {
    return value.isPresent() ? plain(value.getAsDouble()) + unit : "";
  }

  private static String plain(double value) {
    return new BigDecimal(value).round(new MathContext(6)).stripTrailingZeros().toPlainString();
  }

  private static double number(String text) throws InputException {
    try {
      double value = Double.parseDouble(text.strip().replace(',', '.'));
      if (Double.isFinite(value)) {
        return value;
      }
    } catch (NumberFormatException e) {
      throw refused(text, "number");
    }
    throw refused(text, "number");
  }

  private static InputException refused(String text, String key) {
    return new InputException(
        "\"" + text.strip() + "\"",
        "",
        Messages.text("form." + key),
        Messages.text("form." + key + ".remedy"));
  }

  /** How the piece is held: what of it points up. */
  public enum Up {
    /** Not told: nothing is said of steep places. */
    UNTOLD(0, 0, 0),
    /** As in the model. */
    TOP(0, 0, 1),
    /** Upside down. */
    BOTTOM(0, 0, -1),
    /** On its back. */
    FRONT(0, -1, 0),
    /** On its front. */
    BACK(0, 1, 0),
    /** On its right side. */
    LEFT(-1, 0, 0),
    /** On its left side. */
    RIGHT(1, 0, 0),
    /** Another direction, which the job file tells. */
    OTHER(0, 0, 0);

    private final double x;
    private final double y;
    private final double z;

    Up(double x, double y, double z) {
      this.x = x;
      this.y = y;
      this.z = z;
    }

    private Vector3D vector() {
      return Vector3D.of(x, y, z);
    }

    /** Its name. */
    public String title() {
      return Messages.text("up." + name().toLowerCase(Locale.ROOT));
    }
  }

  /** The ways to hold it that can be chosen for a job. */
  public static List<Up> ups(Job job) {
    List<Up> all = new ArrayList<>(List.of(Up.values()));
    if (up(job) != Up.OTHER) {
      all.remove(Up.OTHER);
    }
    return all;
  }

  /** How the piece of a job is held. */
  public static Up up(Job job) {
    if (job.plating().hold().isEmpty()) {
      return Up.UNTOLD;
    }
    Vector3D unit = job.plating().hold().get().up().normalize();
    for (Up up : Up.values()) {
      if (up.vector().norm() > 0 && unit.distance(up.vector()) < 1e-6) {
        return up;
      }
    }
    return Up.OTHER;
  }

  /** The job with its piece held another way. */
  public static Job withUp(Job job, Up up) {
    if (up == up(job) || up == Up.OTHER) {
      return job;
    }
    double steeper = job.plating().hold().map(Job.Hold::steeperDegrees).orElse(STEEP_DEGREES);
    Optional<Job.Hold> hold =
        up == Up.UNTOLD ? Optional.empty() : Optional.of(new Job.Hold(up.vector(), steeper));
    return job.withPlating(PlatingForm.with(job.plating(), job.plating().tool(), hold));
  }

  /** From which lean on liquid runs off. */
  public static final Typed STEEPER =
      new Typed() {
        @Override
        public String key() {
          return "steeper";
        }

        @Override
        public String text(Job job) {
          return job.plating().hold().map(h -> plain(h.steeperDegrees())).orElse("");
        }

        @Override
        public Job typed(Job job, String text) throws InputException {
          if (job.plating().hold().isEmpty() || text.strip().equals(text(job))) {
            return job;
          }
          double degrees = number(text);
          if (!(degrees > 0 && degrees <= 180)) {
            throw refused(text, "degrees");
          }
          Job.Hold hold = new Job.Hold(job.plating().hold().get().up(), degrees);
          return job.withPlating(
              PlatingForm.with(job.plating(), job.plating().tool(), Optional.of(hold)));
        }
      };

  /** What the shop charges. */
  public enum PriceField implements Typed {
    /** As it is to be shown. */
    CURRENCY,
    /** Wage and machine. */
    LABOUR,
    /** Hours beside the work at the piece. */
    EXTRA,
    /** Metal laid down. */
    METAL,
    /** All else that is used up. */
    MATERIALS,
    /** Share for running the shop. */
    OVERHEAD,
    /** Share of all of that. */
    MARGIN,
    /** Least price before tax. */
    MINIMUM,
    /** Share added. */
    TAX;

    @Override
    public String key() {
      return "price-" + name().toLowerCase(Locale.ROOT);
    }

    @Override
    public String text(Job job) {
      return job.quote().map(this::text).orElse("");
    }

    private String text(QuoteRates q) {
      return switch (this) {
        case CURRENCY -> q.currency();
        case LABOUR -> plain(q.labourPerHour());
        case EXTRA -> plain(q.extraHours());
        case METAL -> plain(q.goldPerG());
        case MATERIALS -> plain(q.materials());
        case OVERHEAD -> plain(100 * q.overhead()) + " %";
        case MARGIN -> plain(100 * q.margin()) + " %";
        case MINIMUM -> plain(q.minimum());
        case TAX -> plain(100 * q.tax()) + " %";
      };
    }

    private boolean isShare() {
      return this == OVERHEAD || this == MARGIN || this == TAX;
    }

    @Override
    public Job typed(Job job, String text) throws InputException {
      if (job.quote().isEmpty() || text.strip().equals(text(job))) {
        return job;
      }
      QuoteRates q = job.quote().get();
      double value = 0;
      if (this != CURRENCY) {
        value = number(isShare() ? text.replace("%", "") : text) / (isShare() ? 100 : 1);
        if (value < 0) {
          throw refused(text, "negative");
        }
      }
      double to = value;
      return job.withQuote(
          Optional.of(
              new QuoteRates(
                  this == CURRENCY ? text.strip() : q.currency(),
                  this == LABOUR ? to : q.labourPerHour(),
                  this == EXTRA ? to : q.extraHours(),
                  this == METAL ? to : q.goldPerG(),
                  q.tapePerMetre(),
                  q.lacquerPerLitre(),
                  this == MATERIALS ? to : q.materials(),
                  this == OVERHEAD ? to : q.overhead(),
                  this == MARGIN ? to : q.margin(),
                  this == MINIMUM ? to : q.minimum(),
                  this == TAX ? to : q.tax(),
                  q.validDays(),
                  q.onSheet())));
    }
  }

  /** The job with a price or without; the rates of a new one are all 0, to be typed. */
  public static Job priced(Job job, boolean on) {
    if (on == job.quote().isPresent()) {
      return job;
    }
    return job.withQuote(
        on
            ? Optional.of(new QuoteRates("EUR", 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, VALID_DAYS, true))
            : Optional.empty());
  }

  /** The lines of the latest plan's price, the total last; none without a price. */
  public static List<PlatingForm.Amount> price(DeskState state) {
    List<PlatingForm.Amount> lines = new ArrayList<>();
    Optional<Quote> quote = state.plan().flatMap(p -> p.quote());
    quote.ifPresent(
        q -> {
          q.lines()
              .forEach(
                  line ->
                      lines.add(
                          new PlatingForm.Amount(
                              line.what(), line.amount().toPlainString() + " " + q.currency())));
          lines.add(
              new PlatingForm.Amount(
                  Messages.text("price.total"), q.total().toPlainString() + " " + q.currency()));
        });
    return lines;
  }
}
