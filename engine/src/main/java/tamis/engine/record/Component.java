package tamis.engine.record;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.lang.reflect.RecordComponent;
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
 * @param most how many entries or characters it may have; asked of each value, for which an
 *     annotation is too slow
 */
public record Component(
    String name,
    Form form,
    boolean required,
    @Nullable Object absent,
    Described described,
    Range range,
    int most,
    MethodHandle accessor) {

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
        accessor(owner, part));
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

  private static MethodHandle accessor(Class<? extends Record> owner, RecordComponent part) {
    try {
      return MethodHandles.publicLookup()
          .unreflect(part.getAccessor())
          .asType(MethodType.methodType(Object.class, Object.class));
    } catch (IllegalAccessException hidden) {
      throw new IllegalArgumentException(owner + " must be public", hidden);
    }
  }
}
