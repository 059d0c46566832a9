package tamis.engine.record;

import java.lang.invoke.MethodHandle;
import java.time.DateTimeException;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Calls the factories of value types. */
final class Calls {
  private Calls() {}

  /**
   * @throws Refusal if the text cannot be meant
   */
  static Object parse(MethodHandle factory, String text) {
    try {
      return (Object) factory.invokeExact((Object) text);
    } catch (DateTimeException unreadable) {
      throw new Refusal(
          new Fault(
              FaultCode.UNREADABLE_QUANTITY,
              "",
              text,
              "ISO 8601, for example 2026-05-01T09:00",
              "`" + text + "` is no date or time in the form of ISO 8601"));
    } catch (RuntimeException | Error thrown) {
      throw thrown;
    } catch (Throwable impossible) {
      throw new IllegalStateException("parse threw a checked exception", impossible);
    }
  }

  static Object ofNumber(MethodHandle factory, double number) {
    try {
      return (Object) factory.invokeExact(number);
    } catch (RuntimeException | Error thrown) {
      throw thrown;
    } catch (Throwable impossible) {
      throw new IllegalStateException("ofNumber threw a checked exception", impossible);
    }
  }

  static Object of(MethodHandle factory, Object object) {
    try {
      return (Object) factory.invokeExact(object);
    } catch (RuntimeException | Error thrown) {
      throw thrown;
    } catch (Throwable impossible) {
      throw new IllegalStateException("of threw a checked exception", impossible);
    }
  }
}
