package tamis.plugin.stages;

import java.util.Locale;

/** What kind of egg is heated. */
public enum EggProduct {
  WHITE,
  YOLK,
  SUGARED_YOLK,
  WHOLE,
  SUGARED_WHOLE;

  /** The product in the table of resistance. */
  String base() {
    return switch (this) {
      case WHITE -> "white";
      case YOLK, SUGARED_YOLK -> "yolk";
      case WHOLE, SUGARED_WHOLE -> "whole";
    };
  }

  boolean isSugared() {
    return this == SUGARED_YOLK || this == SUGARED_WHOLE;
  }

  /** The row of the table of pasteurisation, once it is known whether sugar is in it. */
  EggProduct with(boolean sugar) {
    return switch (this) {
      case YOLK -> sugar ? SUGARED_YOLK : YOLK;
      case WHOLE -> sugar ? SUGARED_WHOLE : WHOLE;
      default -> this;
    };
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
