package tamis.api;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The arrows of the tree: {@code api → engine ← plugins}, and who may see what from outside. */
@AnalyzeClasses(packages = "tamis", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  private static final String ENGINE = "tamis.engine..";
  private static final String PLUGINS = "tamis.plugin..";
  private static final String API = "tamis.api..";
  private static final Pattern PLUGIN_MODULE = Pattern.compile("<module>([a-z]+)</module>");

  /** Calls of these classes' methods of these names read the clock. */
  private static final Set<String> CLOCK_METHODS =
      Set.of("now", "currentTimeMillis", "nanoTime", "systemUTC", "systemDefaultZone", "system");

  /** No rule below says anything about a class that was not read: so each module must be there. */
  @ArchTest
  static void every_module_was_read(JavaClasses read) throws Exception {
    var modules =
        PLUGIN_MODULE
            .matcher(Files.readString(Path.of("../plugins/pom.xml")))
            .results()
            .map(module -> module.group(1))
            .collect(Collectors.toCollection(TreeSet::new));
    var plugins =
        read.stream()
            .map(JavaClass::getPackageName)
            .filter(name -> name.startsWith("tamis.plugin."))
            .map(name -> name.split("\\.")[2])
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(plugins).isNotEmpty().isEqualTo(modules);
    assertThat(count(read, "tamis.engine.")).as("engine classes").isGreaterThanOrEqualTo(6);
    assertThat(count(read, "tamis.api.")).as("api classes").isGreaterThanOrEqualTo(2);
  }

  @ArchTest
  static final ArchRule the_engine_needs_only_the_jdk =
      classes()
          .that()
          .resideInAPackage(ENGINE)
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage("java..", "org.jspecify..", ENGINE);

  /** And the libraries for numbers and for HTML, which come along in our jar. */
  @ArchTest
  static final ArchRule plugins_need_only_the_jdk_and_the_engine =
      classes()
          .that()
          .resideInAPackage(PLUGINS)
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              "java..",
              "org.jspecify..",
              "com.fasterxml.jackson..",
              "org.hipparchus..",
              "org.jsoup..",
              "org.ojalgo..",
              ENGINE,
              PLUGINS);

  @ArchTest
  static final ArchRule plugins_do_not_use_each_other =
      slices().matching("tamis.plugin.(*)..").should().notDependOnEachOther();

  @ArchTest
  static final ArchRule the_api_does_not_know_our_plugins =
      noClasses()
          .that()
          .resideInAPackage(API)
          .should()
          .dependOnClassesThat()
          .resideInAPackage(PLUGINS);

  /** Every package is a slice of its own, the one that holds Main too. */
  @ArchTest
  static final ArchRule packages_have_no_cycle =
      slices().matching("tamis.(**)").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule engine_and_plugins_read_no_clock =
      noClasses()
          .that()
          .resideInAnyPackage(ENGINE, PLUGINS)
          .should()
          .accessTargetWhere(readsTheClock())
          .orShould()
          .dependOnClassesThat()
          .belongToAnyOf(java.time.Clock.class, java.util.Timer.class);

  @ArchTest
  static final ArchRule engine_and_plugins_use_no_randomness =
      noClasses()
          .that()
          .resideInAnyPackage(ENGINE, PLUGINS)
          .should()
          .dependOnClassesThat()
          .areAssignableTo(java.util.random.RandomGenerator.class)
          .orShould()
          .callMethod(Math.class, "random")
          .orShould()
          .callMethod(java.util.UUID.class, "randomUUID");

  @ArchTest
  static final ArchRule engine_and_plugins_leave_the_standard_streams_alone =
      noClasses()
          .that()
          .resideInAnyPackage(ENGINE, PLUGINS)
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .orShould()
          .accessField(System.class, "in")
          .orShould()
          .callMethod(Throwable.class, "printStackTrace");

  @ArchTest
  static final ArchRule engine_and_plugins_open_no_file_or_connection =
      noClasses()
          .that()
          .resideInAnyPackage(ENGINE, PLUGINS)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.nio.file..", "java.nio.channels..", "java.net.http..")
          .orShould()
          .dependOnClassesThat()
          .haveNameMatching("java\\.io\\.File.*|java\\.net\\.(.*Socket.*|URLConnection)");

  @ArchTest
  static final ArchRule only_representation_store_and_intake_see_jackson =
      noClasses()
          .that()
          .resideOutsideOfPackages(
              "tamis.api.representation..", "tamis.api.store..", "tamis.plugin.intake.source..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("com.fasterxml.jackson..");

  @ArchTest
  static final ArchRule only_http_sees_the_web_library =
      noClasses()
          .that()
          .resideOutsideOfPackage("tamis.api.http..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("io.javalin..", "org.eclipse.jetty..", "jakarta.servlet..");

  @ArchTest
  static final ArchRule only_the_store_sees_sql =
      noClasses()
          .that()
          .resideOutsideOfPackage("tamis.api.store..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.sql..", "javax.sql..", "org.sqlite..", "org.postgresql..");

  /** 1.0 and 1.00 are not equal to it: amounts are compared with {@code compareTo}. */
  @ArchTest
  static final ArchRule nobody_compares_decimals_with_equals =
      noClasses().should().callMethod(BigDecimal.class, "equals", Object.class);

  private static long count(JavaClasses read, String prefix) {
    return read.stream().filter(one -> (one.getPackageName() + ".").startsWith(prefix)).count();
  }

  private static DescribedPredicate<JavaAccess<?>> readsTheClock() {
    return DescribedPredicate.describe(
        "reads the clock",
        access -> {
          var owner = access.getTargetOwner().getName();
          var name = access.getTarget().getName();
          var asksTheTime = owner.startsWith("java.time.") || owner.equals("java.lang.System");
          return asksTheTime && CLOCK_METHODS.contains(name)
              || name.equals("<init>") && owner.equals("java.util.Date")
              || name.equals("getInstance") && owner.equals("java.util.Calendar");
        });
  }
}
