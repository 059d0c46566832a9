package tamis.api.stream;

import java.nio.file.Path;

/**
 * A calculation of every record of a file.
 *
 * @param calculation its name
 * @param query how to answer, as in an address
 * @param in the records, one a line
 * @param share of them that is calculated here
 * @param out the answers, one a line
 * @param rejected the records without an answer, each with the reason
 */
public record Run(String calculation, String query, Path in, Share share, Path out, Path rejected) {

  /** Where rejected records go if nothing else is said. */
  public static Path rejectedBeside(Path out) {
    return RunMark.beside(out, ".rejected");
  }
}
