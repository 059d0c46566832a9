/** What really happened when a formula was made. */
@NullMarked
package tamis.engine.trial;

import org.jspecify.annotations.NullMarked;
