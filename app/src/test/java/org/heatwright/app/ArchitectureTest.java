package org.heatwright.app;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** Which rooms of the rim may know which, one rule a test, named as its sentence. */
class ArchitectureTest {

  private static final JavaClasses APP =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("org.heatwright.app");

  @Test
  void nothingButMainKnowsTheCommandLine() {
    noClasses()
        .that()
        .resideOutsideOfPackage("org.heatwright.app.cli..")
        .and()
        .doNotHaveFullyQualifiedName("org.heatwright.app.Main")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.heatwright.app.cli..")
        .check(APP);
  }

  @Test
  void filesAndRecordsKnowNoDoor() {
    noClasses()
        .that()
        .resideInAnyPackage(
            "org.heatwright.app.files..",
            "org.heatwright.app.json..",
            "org.heatwright.app.report..",
            "org.heatwright.app.store..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("org.heatwright.app.web..", "org.heatwright.app.cli..")
        .check(APP);
  }

  @Test
  void onlyTheBenchAndTheApiKnowTheWebServer() {
    noClasses()
        .that()
        .resideOutsideOfPackages("org.heatwright.app.web..", "org.heatwright.app.api..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("io.javalin..", "gg.jte..")
        .check(APP);
  }

  @Test
  void onlyTheStoreKnowsTheDatabase() {
    noClasses()
        .that()
        .resideOutsideOfPackage("org.heatwright.app.store..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.sql..", "org.jdbi..", "org.flywaydb..", "org.sqlite..")
        .check(APP);
  }

  /** What is compiled for the page knows keypads and what they stand on, and no more. */
  @Test
  void thePocketKnowsOnlyKeypads() {
    classes()
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(
            "org.heatwright.pocket..",
            "org.heatwright.keypad..",
            "org.heatwright.schedule..",
            "org.heatwright.units..",
            "java..",
            "org.teavm..",
            "org.jspecify.annotations..")
        .check(
            new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("org.heatwright.pocket"));
  }

  @Test
  void onlyTheCodesKnowTheirLibrary() {
    noClasses()
        .that()
        .resideOutsideOfPackage("org.heatwright.app.qr..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("com.google.zxing..")
        .check(APP);
  }
}
