/** What a formula costs, stage by stage, and what it must be sold for. */
@NullMarked
package tamis.plugin.costing;

import org.jspecify.annotations.NullMarked;
