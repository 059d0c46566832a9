/** What an ice-cream mix is made of and where it freezes. */
@NullMarked
package example.icecreammix;

import org.jspecify.annotations.NullMarked;
