/** What the names of foods stand for, by language and place. */
@NullMarked
package tamis.plugin.intake.name;

import org.jspecify.annotations.NullMarked;
