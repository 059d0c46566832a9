/** How much egg wash a tray of pieces takes. */
@NullMarked
package example.eggwash;

import org.jspecify.annotations.NullMarked;
