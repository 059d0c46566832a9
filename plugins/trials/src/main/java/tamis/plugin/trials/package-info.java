/** Trials of a formula beside each other: what differed, what goes with failure, what to try. */
@NullMarked
package tamis.plugin.trials;

import org.jspecify.annotations.NullMarked;
