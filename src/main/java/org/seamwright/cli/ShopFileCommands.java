package org.seamwright.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.seamwright.basis.InputException;
import org.seamwright.job.SafeFiles;
import org.seamwright.shop.ShopBook;
import org.seamwright.shop.ShopException;
import org.seamwright.shop.ShopExchange;
import org.seamwright.shop.ShopJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The book as a whole: out to a file, in from one, checked. */
final class ShopFileCommands {
  private ShopFileCommands() {}

  private static boolean isJson(Path file) throws ShopException {
    String name = file.toString().toLowerCase(Locale.ROOT);
    if (!name.endsWith(".json") && !name.endsWith(".csv")) {
      throw new ShopException(
          file.toString(), "", "the name tells no format", "End it in .csv or .json.");
    }
    return name.endsWith(".json");
  }

  @Command(
      name = "export",
      description = "Writes the whole book as CSV or JSON, told by the file's name.",
      mixinStandardHelpOptions = true,
      footer = {"", "Example:", "  seamwright shop export book.json"})
  static final class Export implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", description = "File to write, .csv or .json.")
    private Path file;

    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      boolean json = isJson(file);
      try (ShopBook book = access.open()) {
        String text = json ? ShopJson.of(book) : ShopExchange.csv(book);
        SafeFiles.replace(file, text.getBytes(StandardCharsets.UTF_8));
      } catch (IOException e) {
        throw OutputFolder.unwritable(file, e);
      }
      return access.told(
          spec.commandLine().getOut(), "Written " + file, Map.of("file", file.toString()));
    }
  }

  @Command(
      name = "import",
      description = "Enters what \"shop export\" wrote; all of it or nothing.",
      mixinStandardHelpOptions = true,
      footer = {"", "Example:", "  seamwright shop import book.json --book new.db"})
  static final class Import implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", description = "File to read, .csv or .json.")
    private Path file;

    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      boolean json = isJson(file);
      String source = file.toString();
      String text = read(source);
      try (ShopBook book = access.open()) {
        int added =
            json ? ShopJson.enter(book, text, source) : ShopExchange.enterCsv(book, text, source);
        return access.told(
            spec.commandLine().getOut(), added + " entries are new.", Map.of("added", added));
      }
    }

    private String read(String source) throws ShopException {
      try {
        byte[] bytes = Files.readAllBytes(file);
        return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      } catch (CharacterCodingException e) {
        throw new ShopException(source, "", "the text is not UTF-8", "Save it as UTF-8.", e);
      } catch (IOException e) {
        throw new ShopException(source, "", "it cannot be read", "Check the name.", e);
      }
    }
  }

  @Command(
      name = "check",
      description = "Checks the file of the book for damage.",
      mixinStandardHelpOptions = true,
      footer = {"", "Example:", "  seamwright shop check"})
  static final class Check implements Callable<Integer> {
    @Mixin private ShopAccess access;
    @Spec private CommandSpec spec;

    @Override
    public Integer call() throws InputException {
      try (ShopBook book = access.open()) {
        List<String> faults = book.faults();
        if (!faults.isEmpty()) {
          throw new ShopException(
              "Shop book",
              "",
              "it is damaged (" + faults.get(0) + ")",
              "Go back to a copy or an export.");
        }
        return access.told(spec.commandLine().getOut(), "The book is sound.", Map.of("faults", 0));
      }
    }
  }
}
