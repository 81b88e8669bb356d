package org.heatwright.app.web;

/** The places of the bench, by what a person is doing; each is a word at the head of every page. */
public enum Place {
  /** What is hot, what happens next, what to do. */
  NOW("/", "Now"),
  /** From the work to the card. */
  PLAN("/plan", "Plan"),
  /** What is known of each kiln, its keypad and its slots. */
  KILNS("/kilns", "Kilns"),
  /** The book of records. */
  FIRINGS("/firings", "Firings"),
  /** The job explained, words, cautions. */
  HELP("/help", "Help");

  private final String address;
  private final String word;

  Place(String address, String word) {
    this.address = address;
    this.word = word;
  }

  public String address() {
    return address;
  }

  /** As it stands at the head of the page. */
  public String word() {
    return word;
  }
}
