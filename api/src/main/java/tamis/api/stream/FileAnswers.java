package tamis.api.stream;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.StandardOpenOption;
import java.util.function.LongConsumer;

/**
 * Answers the records of a file in their order, one line each. The answers that are there tell how
 * far a run came: after an interruption it goes on behind them, and the rejected records are told
 * anew from records and answers; so nothing is done twice or lost, whenever it was interrupted.
 */
public final class FileAnswers {
  private static final int PART = 1 << 16;

  private final Run run;
  private final LineAnswers<?, ?> answers;
  private long records;
  private long rejections;

  public FileAnswers(Run run, LineAnswers<?, ?> answers) {
    this.run = run;
    this.answers = answers;
  }

  /** What is told while it goes on. */
  public interface Progress extends LongConsumer, AutoCloseable {
    /** How many bytes there are to go through. */
    void begin(long bytes);

    @Override
    void close();
  }

  /**
   * Goes through all records.
   *
   * @throws Unusable if a file cannot be used as was asked
   */
  public void write(Progress progress) throws IOException {
    try (var mark = RunMark.of(run);
        var stretch = new Stretch(run.in(), run.share(), answers.lineBytes())) {
      progress.begin(stretch.bytes());
      try (var rejected = new Rejected(run.rejected())) {
        long done = passOver(stretch, rejected);
        answer(stretch, rejected, done, progress);
      }
      mark.done();
    }
  }

  /** Passes over the records that are answered; tells where the last whole answer ends. */
  private long passOver(Stretch stretch, Rejected rejected) throws IOException {
    if (!Files.exists(run.out())) {
      return 0;
    }
    try (var in = new BufferedInputStream(Files.newInputStream(run.out()), PART)) {
      var known = new KnownAnswers(in);
      while (known.next()) {
        if (!stretch.next()) {
          throw new Unusable(run.out() + " has more answers than there are records");
        }
        records++;
        if (known.isProblem()) {
          rejections++;
          rejected.add(known.problem(), stretch.line());
        }
      }
      return known.end();
    }
  }

  private void answer(Stretch stretch, Rejected rejected, long done, LongConsumer progress)
      throws IOException {
    try (var file =
        FileChannel.open(run.out(), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      file.truncate(done).position(done);
      OutputStream out = new BufferedOutputStream(Channels.newOutputStream(file), PART);
      while (stretch.next()) {
        var answered = answers.answer(stretch.line());
        records++;
        if (answered.isProblem()) {
          rejections++;
          rejected.add(answered.bytes(), stretch.line());
        }
        out.write(answered.bytes());
        out.write('\n');
        progress.accept(stretch.read());
      }
      out.flush();
      rejected.flush();
      file.force(true);
    }
  }

  /** Records that were gone through, those of earlier parts of the run too. */
  public long records() {
    return records;
  }

  public long rejections() {
    return rejections;
  }
}
