package tamis.engine.thermal;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * Heat capacity, density and conductivity of a food by what it is made of, after Choi and Okos:
 * each part has a polynomial in the temperature. As in the published table of foods, the heat
 * capacity counts the total carbohydrate and the fibre in it again; density and conductivity count
 * fibre once.
 */
public final class ThermalProperties {
  public static final Table TABLE =
      TableReader.read(
          ThermalProperties.class,
          "/tamis/engine/thermal-components.csv",
          "Polynomials a + b·t + c·t² for the parts of foods, t in °C",
          List.of("component", "property"));

  /** Where the polynomials hold, in °C. */
  public static final double LOWEST_CELSIUS = -40;

  public static final double HIGHEST_CELSIUS = 150;

  /** Heat that a gram of ice takes up while it melts, in kJ/kg. */
  public static final double HEAT_OF_FUSION = row("ice", "fusion").number("a");

  private static final Map<String, Polynomial> POLYNOMIALS =
      TABLE.rows().stream()
          .collect(Collectors.toUnmodifiableMap(Row::key, ThermalProperties::polynomial));

  private ThermalProperties() {}

  private record Polynomial(double a, double b, double c) {
    double at(double celsius) {
      return a + (b + c * celsius) * celsius;
    }

    /** From 0 °C up to {@code celsius}. */
    double integral(double celsius) {
      return (a + (b / 2 + c / 3 * celsius) * celsius) * celsius;
    }
  }

  /** kJ/(kg·K), nothing freezing or melting. */
  public static double specificHeat(Proximates food, double celsius) {
    double heat = 0;
    for (Component component : Component.values()) {
      heat += food.of(component) / 100 * heatOf(component, celsius).at(celsius);
    }
    return heat / whole(food);
  }

  /** Heat above 0 °C in kJ/kg, nothing freezing or melting. */
  public static double heatContent(Proximates food, double celsius) {
    double heat = 0;
    for (Component component : Component.values()) {
      heat += food.of(component) / 100 * heatOf(component, celsius).integral(celsius);
    }
    return heat / whole(food);
  }

  /** How much less heat a kilogram of ice holds than a kilogram of water as cold, in kJ. */
  public static double heatOfFreezing(double celsius) {
    return HEAT_OF_FUSION
        + heatOf(Component.WATER, celsius).integral(celsius)
        - of("ice", "specific-heat").integral(celsius);
  }

  /** kg/m³. */
  public static double density(Proximates food, double celsius) {
    double volume = 0;
    double mass = 0;
    for (Component component : Component.values()) {
      double part = once(food, component);
      mass += part;
      volume += part / of(component.key(), "density").at(celsius);
    }
    return mass / volume;
  }

  /** W/(m·K), the parts side by side. */
  public static double conductivity(Proximates food, double celsius) {
    double volume = 0;
    double conductivity = 0;
    for (Component component : Component.values()) {
      double part = once(food, component) / of(component.key(), "density").at(celsius);
      volume += part;
      conductivity += part * of(component.key(), "conductivity").at(celsius);
    }
    return conductivity / volume;
  }

  /** What was not told is taken to be like the rest. */
  private static double whole(Proximates food) {
    return food.sum() < 99 ? food.sum() / 100 : 1;
  }

  private static double once(Proximates food, Component component) {
    double part = food.of(component);
    return component == Component.CARBOHYDRATE ? part - food.of(Component.FIBRE) : part;
  }

  private static Polynomial heatOf(Component component, double celsius) {
    boolean supercooled = component == Component.WATER && celsius < 0;
    return of(supercooled ? "water-below-0" : component.key(), "specific-heat");
  }

  private static Polynomial of(String component, String property) {
    Polynomial found = POLYNOMIALS.get(component + "/" + property);
    if (found == null) {
      throw new BadTable(TABLE.name(), 1, "component", component + "/" + property + " is missing");
    }
    return found;
  }

  private static Row row(String component, String property) {
    Row row = TABLE.row(component + "/" + property);
    if (row == null) {
      throw new BadTable(TABLE.name(), 1, "component", component + "/" + property + " is missing");
    }
    return row;
  }

  private static Polynomial polynomial(Row row) {
    return new Polynomial(row.number("a"), row.number("b"), row.number("c"));
  }
}
