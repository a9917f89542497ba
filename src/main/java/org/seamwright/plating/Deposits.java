package org.seamwright.plating;

import java.util.List;
import java.util.stream.Collectors;

/**
 * The metals known here, as they are laid down.
 *
 * <p>Densities are those of the pure metal (CRC-type tables). Electrodeposits are often lighter:
 * planning with the pure metal's density errs towards enough metal. Atomic weights are IUPAC/CIAAW
 * values; gold's was seen in a copy, the others are from memory.
 */
public final class Deposits {
  private static final String GOLD_WEIGHT = "Atomic weight 196.96657: IUPAC/CIAAW.";
  private static final String WEIGHT = "Atomic weight: IUPAC/CIAAW, from memory.";

  private static final List<Deposit> ALL =
      List.of(
          new Deposit(
              "gold-hard",
              "Gold, hard (about 99.7%)",
              19.3,
              196.966570,
              1,
              "Density 19.3 g/cm³ is that of pure gold (CRC-type tables; ASTM B488). Hard deposits"
                  + " weigh 16.0–17.0 g/cm³ (Gold Bulletin, \"Understanding Gold Plating\"); 19.3"
                  + " matches the trade's coverage rule and errs towards enough gold. "
                  + GOLD_WEIGHT
                  + " Gold(I), as in cyanide and sulfite solutions."),
          new Deposit(
              "gold-soft",
              "Gold, soft (99.9%)",
              19.3,
              196.966570,
              1,
              "Density 19.3 g/cm³: pure soft deposit (Gold Bulletin, \"Understanding Gold"
                  + " Plating\"). "
                  + GOLD_WEIGHT
                  + " Gold(I), as in cyanide and sulfite solutions."),
          new Deposit("silver", "Silver", 10.5, 107.8682, 1, density("10.5") + WEIGHT),
          new Deposit("nickel", "Nickel", 8.9, 58.6934, 2, density("8.90") + WEIGHT),
          new Deposit(
              "copper",
              "Copper, acid",
              8.96,
              63.546,
              2,
              density("8.96")
                  + WEIGHT
                  + " Copper(II), as in acid and in cyanide-free alkaline solutions."),
          new Deposit(
              "copper-cyanide",
              "Copper, alkaline with cyanide",
              8.96,
              63.546,
              1,
              density("8.96") + WEIGHT + " Copper(I)."),
          new Deposit(
              "rhodium",
              "Rhodium",
              12.4,
              102.90549,
              3,
              density("12.4") + WEIGHT + " Rhodium(III)."),
          new Deposit("palladium", "Palladium", 12.0, 106.42, 2, density("12.0") + WEIGHT));

  private Deposits() {}

  private static String density(String value) {
    return "Density " + value + " g/cm³: CRC-type tables. ";
  }

  /** All metals, gold first. */
  public static List<Deposit> all() {
    return ALL;
  }

  /**
   * The metal of an id.
   *
   * @throws PlatingException if there is none; lists the ids there are
   */
  public static Deposit byId(String id) throws PlatingException {
    for (Deposit deposit : ALL) {
      if (deposit.id().equals(id)) {
        return deposit;
      }
    }
    throw new PlatingException(
        "Deposit \"" + id + "\"",
        "",
        "there is no such deposit",
        "Use one of " + ALL.stream().map(Deposit::id).collect(Collectors.joining(", ")) + ".");
  }
}
