package org.seamwright.window;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.seamwright.desk.Messages;

/** The texts are all there and all used, and presenters know no toolkit. */
class MessagesTest {
  private static final ResourceBundle BUNDLE =
      ResourceBundle.getBundle("org.seamwright.desk.messages");

  @Test
  void putsPartsInTheirPlaces() {
    assertThat(Messages.text("section.title", "3", "12")).isEqualTo("Section 3 of 12");
  }

  @Test
  void hasEveryTextThatTheWindowNamesAndNoOther() throws IOException {
    Set<String> named = new TreeSet<>();
    // Keys are written whole, or as a family and a word put behind it: "tool." + word.
    Set<String> begun = new TreeSet<>();
    Pattern literal = Pattern.compile("\"([a-z]+(?:[._-][a-z]+)*\\.?)\"( \\+)?");
    for (String place : new String[] {"desk", "bench", "window"}) {
      try (Stream<Path> files = Files.list(Path.of("src/main/java/org/seamwright/" + place))) {
        for (Path file : files.toList()) {
          Matcher matcher = literal.matcher(Files.readString(file));
          while (matcher.find()) {
            String key = matcher.group(1);
            if (key.endsWith(".")) {
              begun.add(key);
            } else if (key.contains(".")) {
              named.add(key);
            }
          }
        }
      }
    }
    for (StandardView view : StandardView.values()) {
      named.add("view." + view.name().toLowerCase(Locale.ROOT));
    }
    for (String look : new String[] {"look.sections", "look.again", "look.gold"}) {
      named.add(look + ".tip");
    }
    assertThat(BUNDLE.keySet())
        .allMatch(key -> named.contains(key) || begun.stream().anyMatch(key::startsWith));
    Set<String> families =
        BUNDLE.keySet().stream()
            .map(key -> key.substring(0, key.indexOf('.')))
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(named.stream().filter(key -> families.contains(key.replaceAll("[.].*", ""))))
        .filteredOn(key -> !key.equals("window.css"))
        .allSatisfy(key -> assertThat(BUNDLE.containsKey(key)).as(key).isTrue());
  }

  @Test
  void onlyViewsKnowTheToolkitAndOnlyTheCameraKnowsTheEngine() {
    JavaClasses classes =
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.seamwright.window");
    Pattern views =
        Pattern.compile("(\\w*(View|Card|Tools|Frame|App|Scene|Test)|Swatch|Launch)(\\$.*)?");
    ArchRuleDefinition.noClasses()
        .that(
            DescribedPredicate.describe(
                "are no views",
                (JavaClass c) ->
                    !views
                        .matcher(c.getName().substring(c.getPackageName().length() + 1))
                        .matches()))
        .should()
        .dependOnClassesThat()
        .resideInAPackage("javafx..")
        .because("presenters are tested without a display")
        .check(classes);
    ArchRuleDefinition.noClasses()
        .that()
        .doNotHaveFullyQualifiedName("org.seamwright.window.OrbitCamera")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("com.jme3..")
        .because("its mutable vectors are for the camera's own arithmetic")
        .check(classes);
  }
}
