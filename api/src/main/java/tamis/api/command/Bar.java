package tamis.api.command;

import java.io.Console;
import java.lang.reflect.InvocationTargetException;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.jspecify.annotations.Nullable;
import tamis.api.stream.FileAnswers;

/** How far a file is gone through, for who sits at a terminal; nothing for who does not. */
final class Bar implements FileAnswers.Progress {
  private static final int KILOBYTE = 1_024;

  private final String name;
  private final boolean shown;
  private @Nullable ProgressBar bar;

  private Bar(String name, boolean shown) {
    this.name = name;
    this.shown = shown;
  }

  static Bar of(String name) {
    return new Bar(name, isTerminal());
  }

  @SuppressWarnings("SystemConsoleNull") // asked again below, where it is never null
  private static boolean isTerminal() {
    var console = System.console();
    if (console == null) {
      return false;
    }
    try {
      // From JDK 22 on there always is a console, which knows whether it is a terminal.
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (NoSuchMethodException older) {
      return true;
    } catch (IllegalAccessException | InvocationTargetException unknown) {
      return false;
    }
  }

  @Override
  public void begin(long bytes) {
    if (shown) {
      bar =
          new ProgressBarBuilder()
              .setTaskName(name)
              .setStyle(ProgressBarStyle.ASCII)
              .setUnit(" KB", KILOBYTE)
              .setInitialMax(bytes)
              .build();
    }
  }

  @Override
  public void accept(long bytes) {
    if (bar != null) {
      bar.stepTo(bytes);
    }
  }

  @Override
  public void close() {
    if (bar != null) {
      bar.close();
    }
  }
}
