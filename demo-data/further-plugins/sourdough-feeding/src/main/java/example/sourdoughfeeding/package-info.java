/** What a sourdough starter is fed and when it is ripe. */
@NullMarked
package example.sourdoughfeeding;

import org.jspecify.annotations.NullMarked;
