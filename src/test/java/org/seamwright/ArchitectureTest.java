package org.seamwright;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.conditions.ArchConditions;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Holds the table of packages: who may import whom, and which library lives where. */
@AnalyzeClasses(packages = "org.seamwright", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  private static final String ROOT = "org.seamwright.";

  /** Package → packages of the project it may import. The same table stands in docs/design.md. */
  private static final Map<String, List<String>> MAY_IMPORT =
      new TreeMap<>(
          Map.ofEntries(
              Map.entry("basis", List.of()),
              Map.entry("units", List.of("basis")),
              Map.entry("mesh", List.of("basis")),
              Map.entry("meshfile", List.of("basis", "mesh")),
              Map.entry("measure", List.of("basis", "mesh")),
              Map.entry("geodesic", List.of("basis", "mesh")),
              Map.entry("mend", List.of("basis", "mesh", "measure", "geodesic")),
              Map.entry("region", List.of("basis", "mesh", "measure", "geodesic")),
              Map.entry("section", List.of("basis", "mesh", "measure", "geodesic", "region")),
              Map.entry("mask", List.of("basis", "mesh", "measure", "geodesic", "region")),
              Map.entry("flatten", List.of("basis", "mesh", "measure", "geodesic")),
              Map.entry("plating", List.of("basis")),
              Map.entry(
                  "job",
                  List.of(
                      "basis",
                      "units",
                      "mesh",
                      "meshfile",
                      "measure",
                      "geodesic",
                      "mend",
                      "region",
                      "section",
                      "mask",
                      "flatten",
                      "plating")),
              Map.entry("shop", List.of("basis", "plating", "job")),
              Map.entry("picture", List.of("basis", "units", "mesh", "region", "section")),
              Map.entry(
                  "paper",
                  List.of(
                      "basis", "units", "mesh", "measure", "mend", "region", "section", "mask",
                      "flatten", "plating", "job", "picture")),
              Map.entry(
                  "share",
                  List.of(
                      "basis",
                      "units",
                      "mesh",
                      "meshfile",
                      "region",
                      "section",
                      "plating",
                      "job",
                      "picture")),
              Map.entry(
                  "cli",
                  List.of(
                      "share",
                      "basis",
                      "units",
                      "mesh",
                      "meshfile",
                      "measure",
                      "geodesic",
                      "mend",
                      "region",
                      "section",
                      "mask",
                      "flatten",
                      "plating",
                      "job",
                      "picture",
                      "paper",
                      "shop")),
              Map.entry(
                  "desk",
                  List.of(
                      "basis",
                      "units",
                      "mesh",
                      "meshfile",
                      "measure",
                      "mend",
                      "region",
                      "section",
                      "plating",
                      "job",
                      "paper")),
              Map.entry(
                  "bench",
                  List.of("basis", "units", "section", "mask", "plating", "job", "shop", "desk")),
              Map.entry(
                  "window",
                  List.of(
                      "bench",
                      "basis",
                      "units",
                      "mesh",
                      "meshfile",
                      "measure",
                      "geodesic",
                      "mend",
                      "region",
                      "section",
                      "mask",
                      "plating",
                      "job",
                      "picture",
                      "paper",
                      "shop",
                      "desk")),
              Map.entry(
                  "sample",
                  List.of("basis", "mesh", "meshfile", "mend", "job", "region", "units"))));

  @ArchTest
  static void packagesImportOnlyWhatTheTableAllows(JavaClasses classes) {
    MAY_IMPORT.forEach(
        (from, allowed) ->
            ArchRuleDefinition.noClasses()
                .that()
                .resideInAPackage(ROOT + from)
                .should(
                    ArchConditions.dependOnClassesThat(
                        DescribedPredicate.describe(
                            "are of the project but not of " + allowed,
                            (JavaClass c) ->
                                c.getPackageName().startsWith(ROOT)
                                    && !c.getPackageName().equals(ROOT + from)
                                    && !allowed.contains(
                                        c.getPackageName().substring(ROOT.length())))))
                .because("an arrow back up would tie the arithmetic to its users")
                .allowEmptyShould(true)
                .check(classes));
  }

  @ArchTest
  static void everyPackageIsInTheTable(JavaClasses classes) {
    ArchRuleDefinition.classes()
        .that()
        .resideInAPackage("org.seamwright..")
        .should()
        .resideInAnyPackage(MAY_IMPORT.keySet().stream().map(p -> ROOT + p).toArray(String[]::new))
        .because("a new package states who may import it")
        .check(classes);
  }

  @ArchTest
  static final ArchRule javaFxStaysInTheWindow =
      onlyIn("javafx..", "window", "nothing but the window needs a display");

  @ArchTest
  static final ArchRule jmonkeyEngineStaysInTheWindow =
      onlyIn("com.jme3..", "window", "its mutable float vectors are for camera and picking only");

  @ArchTest
  static final ArchRule pdfboxStaysInPapers =
      onlyIn("org.apache.pdfbox..", "paper", "papers are the only PDFs");

  @ArchTest
  static final ArchRule jtsStaysInFlattening =
      onlyIn("org.locationtech.jts..", "flatten", "templates are the only plane polygons");

  @ArchTest
  static final ArchRule databasesStayInTheShopBook =
      onlyIn("java.sql..", "shop", "the shop book is the only database");

  @ArchTest
  static final ArchRule sqliteStaysInTheShopBook =
      onlyIn("org.sqlite..", "shop", "the shop book is the only database");

  @ArchTest
  static final ArchRule picocliStaysInTheCommandLine =
      onlyIn("picocli..", "cli", "options are spelled in one place");

  @ArchTest
  static final ArchRule jacksonStaysInFiles =
      noClasses()
          .that()
          .resideOutsideOfPackages(ROOT + "job", ROOT + "meshfile")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("com.fasterxml.jackson..")
          .because("JSON is read and written where files are");

  @ArchTest
  static final ArchRule unitsLibraryStaysInUnits =
      onlyIn("javax.measure..", "units", "units change only at the edges");

  @ArchTest
  static final ArchRule onlyTheCommandLinePrints =
      noClasses()
          .that()
          .resideOutsideOfPackages(ROOT + "cli")
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .because("the core tells by notices and exceptions");

  private static ArchRule onlyIn(String library, String home, String reason) {
    return noClasses()
        .that()
        .resideOutsideOfPackage(ROOT + home)
        .should()
        .dependOnClassesThat()
        .resideInAPackage(library)
        .because(reason);
  }
}
