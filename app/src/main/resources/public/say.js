// What the scripts say, in the page's language. The English text is the key; a text that is not in
// the book stays English. Holes are filled in order: say("Step {0} of {1}", 2, 9).
import book from "/languages/words.js";

export const say = (english, ...values) =>
  (book.words[english] ?? english).replace(/\{(\d)\}/g, (hole, number) => values[number] ?? hole);
