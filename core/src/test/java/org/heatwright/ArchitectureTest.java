package org.heatwright;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noMethods;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The order of imports and the manners of the core, one rule a test, named as its sentence. */
class ArchitectureTest {

  private static final JavaClasses CORE =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("org.heatwright");

  /** Earlier packages know nothing of later ones. A new package takes its place here. */
  private static final List<String> ORDER =
      List.of(
          "numerics",
          "units",
          "material",
          "schedule",
          "sensing",
          "keypad",
          "kiln",
          "mould",
          "piece",
          "forecast",
          "learn",
          "inspect",
          "work",
          "improve");

  /** Words that may end the name of a bare double: a unit, or a dimensionless word. */
  private static final Pattern UNIT_IN_NAME =
      Pattern.compile(
          "(?i).*(celsius|kelvins?|kelvinsPerHour|kelvinsAt1000|perKelvin|seconds|minutes|hours|"
              + "watts|joules|kilowattHours?|pascals|volts|amperes|kilograms|grams|metres|millimetres|"
              + "perSecond|perCubicMetre|perMetre|perMetreKelvin|perWatt|perKilogramKelvin|perKilogram|perMole|"
              + "factor|share|emissivity|waterPowder|ratio|decades|low|median|high)$");

  @Test
  void everyPackageHasItsPlaceInTheOrder() {
    for (JavaClass type : CORE) {
      assertThat(ORDER).contains(partOf(type));
    }
  }

  @Test
  void noPackageUsesALaterOne() {
    for (int i = 0; i < ORDER.size() - 1; i++) {
      String[] later =
          ORDER.subList(i + 1, ORDER.size()).stream()
              .map(part -> "org.heatwright." + part + "..")
              .toArray(String[]::new);
      noClasses()
          .that(resideInAPackage("org.heatwright." + ORDER.get(i) + ".."))
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(later)
          .allowEmptyShould(true)
          .check(CORE);
    }
  }

  @Test
  void theKilnSeesItsLoadOnlyThroughAnInterface() {
    noClasses()
        .that()
        .resideInAPackage("org.heatwright.kiln")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.heatwright.mould")
        .check(CORE);
  }

  @Test
  void theCoreDoesNoInputOrOutput() {
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.nio.file..", "java.net..", "java.sql..", "java.util.logging..")
        .orShould()
        .dependOnClassesThat()
        .haveNameMatching("java\\.io\\.(File|.*Stream|.*Reader|.*Writer)")
        .orShould()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .check(CORE);
  }

  @Test
  void theCoreHoldsNoClock() {
    noClasses()
        .should()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.time.Clock")
        .check(CORE);
    noClasses()
        .should()
        .callMethodWhere(
            com.tngtech.archunit.base.DescribedPredicate.describe(
                "reads the time",
                call ->
                    (call.getTarget().getName().equals("now")
                            && call.getTargetOwner().getPackageName().startsWith("java.time"))
                        || (call.getTarget().getName().matches("currentTimeMillis|nanoTime")
                            && call.getTargetOwner().isEquivalentTo(System.class))))
        .check(CORE);
  }

  @Test
  void theCoreKnowsNoFramework() {
    classes()
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(
            "org.heatwright..", "java..", "org.hipparchus..", "org.jspecify.annotations..")
        .check(CORE);
  }

  @Test
  void nothingStaticChanges() {
    fields().that().areStatic().and().areNotPrivate().should().beFinal().check(CORE);
    fields().that().areStatic().should().beFinal().check(CORE);
  }

  @Test
  void nothingIsSynchronisedBecauseNothingIsShared() {
    noMethods()
        .should()
        .haveModifier(com.tngtech.archunit.core.domain.JavaModifier.SYNCHRONIZED)
        .check(CORE);
  }

  @Test
  void everyBareDoubleInAPublicRecordNamesItsUnit() {
    List<String> offenders = new ArrayList<>();
    for (JavaClass type : CORE) {
      Class<?> reflected = type.reflect();
      if (!reflected.isRecord() || !java.lang.reflect.Modifier.isPublic(reflected.getModifiers())) {
        continue;
      }
      for (RecordComponent component : reflected.getRecordComponents()) {
        if (component.getType() == double.class
            && !UNIT_IN_NAME.matcher(component.getName()).matches()
            && !NAMED_ELSEWHERE.contains(type.getSimpleName() + "." + component.getName())) {
          offenders.add(type.getSimpleName() + "." + component.getName());
        }
      }
    }
    assertThat(offenders).isEmpty();
  }

  /** Numbers whose unit is said by another field or by the type; each entry is a decision. */
  private static final Set<String> NAMED_ELSEWHERE =
      Set.of(
          "Accuracy.cellGrowth",
          "CheckFigures.sumOfTargets",
          "Investment.pouredHoursBefore",
          "PriceBand.pricePerKilowattHour",
          "Spread.usual");

  private static String partOf(JavaClass type) {
    return type.getPackageName().replaceFirst("org\\.heatwright\\.", "").replaceFirst("\\..*", "");
  }
}
