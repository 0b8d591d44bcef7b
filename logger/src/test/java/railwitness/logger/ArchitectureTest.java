package railwitness.logger;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.simpleName;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The arrows of the house. */
@AnalyzeClasses(packages = "railwitness", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    @ArchTest
    static final ArchRule driversStandOnNothingOfOurs = noClasses()
            .that()
            .resideInAPackage("railwitness.drivers..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("railwitness.safety..", "railwitness.analysis..", "railwitness.logger..");

    @ArchTest
    static final ArchRule safetyStandsOnDriversAlone = noClasses()
            .that()
            .resideInAPackage("railwitness.safety..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("railwitness.analysis..", "railwitness.logger..");

    @ArchTest
    static final ArchRule analysisStandsOnTheJdkAndHipparchus = classes()
            .that()
            .resideInAPackage("railwitness.analysis..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage("railwitness.analysis..", "java..", "org.hipparchus..");

    @ArchTest
    static final ArchRule whatRecordsKnowsNeitherReportsNorPeople = noClasses()
            .that()
            .resideInAPackage("railwitness.logger.recording..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("railwitness.logger.reporting..", "railwitness.logger.ui..");

    @ArchTest
    static final ArchRule whatReportsKnowsNoWindowAndNoCommand = noClasses()
            .that()
            .resideInAPackage("railwitness.logger.reporting..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("railwitness.logger.ui..");

    @ArchTest
    static final ArchRule thePhysicsOfTheVirtualUnitKnowsNoWire = classes()
            .that()
            .resideInAPackage("railwitness.drivers.converter..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage("railwitness.drivers.converter..", "java..");

    @ArchTest
    static final ArchRule noPackageCycles =
            slices().matching("railwitness.(**)").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule rootPackagesAreEmpty = noClasses()
            .should()
            .resideInAnyPackage(
                    "railwitness",
                    "railwitness.drivers",
                    "railwitness.safety",
                    "railwitness.analysis",
                    "railwitness.logger");

    @ArchTest
    static final ArchRule oneFileKnowsSerialPorts = noClasses()
            .that(not(simpleName("SerialWire")))
            .and()
            .haveNameNotMatching(".*\\.SerialWire\\$.*")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("com.fazecast..");

    @ArchTest
    static final ArchRule onlyTheStoreKnowsSql = noClasses()
            .that()
            .resideOutsideOfPackage("railwitness.logger.recording.store..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.sql..", "org.sqlite..");

    @ArchTest
    static final ArchRule theOutputIsCommandedFromPowerAlone = noClasses()
            .that(not(resideInAnyPackage("railwitness.safety.power..", "railwitness.drivers..")))
            .should()
            .callMethod("railwitness.drivers.instrument.Supply", "switchOn")
            .orShould()
            .callMethod("railwitness.drivers.instrument.Supply", "switchOff")
            .orShould()
            .callMethod("railwitness.drivers.instrument.Load", "inputOn");

    @ArchTest
    static final ArchRule onlyCommandsUseTheStandardStreams = noClasses()
            .that(not(resideInAnyPackage("railwitness.logger.ui.command..", "railwitness.safety.guardian..")))
            .should(ACCESS_STANDARD_STREAMS);

    @ArchTest
    static final ArchRule commandsHoldNoFormula = noClasses()
            .that()
            .resideInAnyPackage("railwitness.logger.ui.command..", "railwitness.logger.ui.screen..")
            .should()
            .dependOnClassesThat()
            .haveFullyQualifiedName("java.lang.StrictMath")
            .orShould()
            .callMethod(Math.class, "sqrt", double.class)
            .orShould()
            .callMethod(Math.class, "exp", double.class)
            .orShould()
            .callMethod(Math.class, "log", double.class);
}
