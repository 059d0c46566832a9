/** The command line and its settings: the only place that wires. */
@NullMarked
package tamis.api.command;

import org.jspecify.annotations.NullMarked;
