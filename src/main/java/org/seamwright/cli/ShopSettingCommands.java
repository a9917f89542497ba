package org.seamwright.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.seamwright.basis.InputException;
import org.seamwright.job.JobFileException;
import org.seamwright.job.QuoteJson;
import org.seamwright.plating.QuoteRates;
import org.seamwright.shop.ShopBook;
import org.seamwright.shop.ShopException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The shop's own prices, kept in the book for one job after another. */
final class ShopSettingCommands {
  private ShopSettingCommands() {}

  /** The prices that the book holds; for what it doesn't, those that the job has. */
  static QuoteRates rates(ShopBook book, Optional<QuoteRates> ofJob) throws InputException {
    Map<String, String> known = new LinkedHashMap<>(book.settings());
    known.keySet().retainAll(QuoteJson.keys());
    if (known.isEmpty()) {
      throw new ShopException(
          "Shop book",
          "",
          "it holds no prices",
          "Enter them with \"shop set\", the currency first.");
    }
    return ofJob.isPresent() ? QuoteJson.typed(ofJob.get(), known) : QuoteJson.typed(known);
  }

  @Command(
      name = "set",
      description =
          "Sets one of the shop's own prices, under the names that \"quote\" has in job files, or"
              + " its name, address or logo.",
      mixinStandardHelpOptions = true,
      footer = {
        "",
        "The prices go into a job only on request, with \"shop apply JOB --prices\". shopName,",
        "shopAddress (lines parted by \";\") and shopLogo (a PNG or JPEG file, at most 1 MB and",
        "4000 pixels a side) head the papers of every plan and the pages of share.",
        "",
        "Examples, with invented figures:",
        "  seamwright shop set currency EUR",
        "  seamwright shop set labourPerHour 60",
        "  seamwright shop set shopName \"Example Plating Shop\"",
        "  seamwright shop set shopAddress \"1 Invented Street; 00000 Nowhere\"",
        "  seamwright shop set shopLogo logo.png",
        "  seamwright shop set extraTime \"90 min\""
      })
  static final class Set implements Callable<Integer> {
    @Parameters(
        paramLabel = "KEY",
        description = "Name, as under \"quote\" in job files; or shopName, shopAddress, shopLogo.")
    private String key;

    @Parameters(paramLabel = "VALUE", description = "Its value; empty takes it out.")
    private String value;

    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      check();
      try (ShopBook book = access.open()) {
        book.set(key, value);
        return access.told(
            spec.commandLine().getOut(),
            value.isEmpty() ? key + " taken out." : key + " is " + value + ".",
            Map.of("key", key, "value", value));
      }
    }

    /** A key or value that no job would take must not get into the book. */
    private void check() throws InputException {
      if (ShopHeadAccess.keys().contains(key)) {
        value = ShopHeadAccess.checked(key, value);
        return;
      }
      if (!QuoteJson.keys().contains(key)) {
        throw new ShopException(
            key,
            "",
            "there is no such setting",
            "Known: "
                + String.join(", ", QuoteJson.keys())
                + ", "
                + String.join(", ", ShopHeadAccess.keys()));
      }
      Map<String, String> tried = new LinkedHashMap<>(Map.of("currency", "-"));
      if (!value.isEmpty()) {
        tried.put(key, value);
      }
      try {
        QuoteJson.typed(tried);
      } catch (JobFileException e) {
        throw new ShopException(key, "", e.problem(), e.remedy(), e);
      }
    }
  }

  @Command(
      name = "settings",
      description = "Lists the shop's own prices, its name, address and logo.",
      mixinStandardHelpOptions = true,
      footer = {"", "Example:", "  seamwright shop settings --json"})
  static final class ListAll implements Callable<Integer> {
    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      try (ShopBook book = access.open()) {
        Map<String, String> settings = book.settings();
        return access.told(
            spec.commandLine().getOut(),
            settings.isEmpty()
                ? "Nothing is set."
                : settings.entrySet().stream()
                    .map(e -> e.getKey() + ": " + e.getValue())
                    .collect(Collectors.joining(System.lineSeparator())),
            settings);
      }
    }
  }
}
