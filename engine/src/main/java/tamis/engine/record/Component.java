package tamis.engine.record;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.lang.reflect.RecordComponent;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One component of a described record.
 *
 * @param name as callers write it
 * @param form how its value is written
 * @param absent what stands for it when it is left out: null, or an empty list or map
 * @param required whether it must be given
 * @param described its meaning and bounds
 * @param range its bounds, ready to compare
 * @param most how many entries or characters it may have; this and what follows is asked of each
 *     value, for which an annotation is too slow
 * @param fewest how few entries it may have
 * @param limit the operator's limit on its entries
 * @param nullAllowed whether {@code null} is read as left out
 * @param accessor gives its value of a record
 * @param figure gives it as it is if it is a {@code double}, which is then always there; else null
 */
public record Component(
    String name,
    Form form,
    boolean required,
    @Nullable Object absent,
    Described described,
    Range range,
    int most,
    int fewest,
    Limit limit,
    boolean nullAllowed,
    MethodHandle accessor,
    @Nullable MethodHandle figure) {

  static Component of(Class<? extends Record> owner, RecordComponent part) {
    @Nullable Described described = part.getAnnotation(Described.class);
    if (described == null) {
      throw new IllegalArgumentException(
          owner.getName() + "." + part.getName() + " is not described");
    }
    Form form = Forms.of(part.getGenericType());
    boolean nullable = part.getAnnotatedType().isAnnotationPresent(Nullable.class);
    if (nullable && part.getType().isPrimitive()) {
      throw new IllegalArgumentException(owner.getName() + "." + part.getName() + " is primitive");
    }
    @Nullable Object absent = null;
    if (described.optional()) {
      absent = Empty.of(form);
    }
    return new Component(
        described.name().isEmpty() ? part.getName() : described.name(),
        form,
        !nullable && !described.optional(),
        absent,
        described,
        Range.of(form, described),
        described.most(),
        described.fewest(),
        described.limit(),
        described.nullAllowed(),
        accessor(owner, part, Object.class),
        part.getType() == double.class ? accessor(owner, part, double.class) : null);
  }

  /** Whether it is a number that is always there and that {@link #figureOf} gives. */
  public boolean isFigure() {
    return figure != null;
  }

  /** The number that {@code record} holds here. */
  public double figureOf(Record record) {
    try {
      return (double) Objects.requireNonNull(figure).invokeExact((Object) record);
    } catch (RuntimeException | Error thrown) {
      throw thrown;
    } catch (Throwable impossible) {
      throw new IllegalStateException("an accessor threw a checked exception", impossible);
    }
  }

  /** The value that {@code record} holds here; null if it holds none. */
  public @Nullable Object of(Record record) {
    try {
      return (Object) accessor.invokeExact((Object) record);
    } catch (RuntimeException | Error thrown) {
      throw thrown;
    } catch (Throwable impossible) {
      throw new IllegalStateException("an accessor threw a checked exception", impossible);
    }
  }

  private static MethodHandle accessor(
      Class<? extends Record> owner, RecordComponent part, Class<?> type) {
    try {
      return MethodHandles.publicLookup()
          .unreflect(part.getAccessor())
          .asType(MethodType.methodType(type, Object.class));
    } catch (IllegalAccessException hidden) {
      throw new IllegalArgumentException(owner + " must be public", hidden);
    }
  }
}
