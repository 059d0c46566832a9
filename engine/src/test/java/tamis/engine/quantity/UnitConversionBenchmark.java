package tamis.engine.quantity;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import systems.uom.common.USCustomary;
import tech.units.indriya.quantity.Quantities;

/**
 * Cups to fluid ounces: typed, against a general units library and a bare multiplication. What
 * reading the text costs is measured apart.
 *
 * <pre>mvn -q -pl engine -am -Pbench -Dbench=UnitConversion</pre>
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(2)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class UnitConversionBenchmark {
  private double cups = 2.25;
  private double factor = 8;
  private String cupName = "cup";
  private String ounceName = "fl oz";
  private String text = "2 1/4 cup";
  private final Unit cup = Units.standard().unit("cup", Measures.US);
  private final Unit ounce = Units.standard().unit("fl oz", Measures.US);
  private final javax.measure.Unit<javax.measure.quantity.Volume> theirCup = USCustomary.CUP;
  private final javax.measure.Unit<javax.measure.quantity.Volume> theirOunce =
      USCustomary.FLUID_OUNCE;

  @Benchmark
  public double bareMultiplication() {
    return cups * factor;
  }

  @Benchmark
  public double typed() {
    Volume volume = Volume.ofMillilitres(cup.toCanonical(cups));
    return ounce.fromCanonical(volume.millilitres());
  }

  @Benchmark
  public double typedWithUnitsByName() {
    Units units = Units.standard();
    Volume volume = Volume.ofMillilitres(units.unit(cupName, Measures.US).toCanonical(cups));
    return units.unit(ounceName, Measures.US).fromCanonical(volume.millilitres());
  }

  @Benchmark
  public double libraryQuantityTo() {
    return Quantities.getQuantity(cups, theirCup).to(theirOunce).getValue().doubleValue();
  }

  @Benchmark
  public Quantity readingTheText() {
    return Quantity.parse(text);
  }

  @Benchmark
  public Volume readingATypedVolume() {
    return Volume.parse(text);
  }
}
