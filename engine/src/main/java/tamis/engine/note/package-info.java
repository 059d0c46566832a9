/** What stands beside an answer: remarks, and the rows of the tables it rests on. */
@NullMarked
package tamis.engine.note;

import org.jspecify.annotations.NullMarked;
