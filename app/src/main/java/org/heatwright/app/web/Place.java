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
  /** Every value with its source. */
  MATERIALS("/materials", "Materials"),
  /** The job explained, words, cautions. */
  HELP("/help", "Help");

  private final String address;
  private final String word;

  Place(String address, String word) {
    this.address = address;
    this.word = word;
  }

  /** The place of an address, by how it begins; Now where nothing fits. */
  static Place near(String path) {
    if (path.startsWith("/kiln") || path.startsWith("/slots")) {
      return KILNS;
    }
    if (path.startsWith("/firing")) {
      return FIRINGS;
    }
    if (path.startsWith("/materials") || path.startsWith("/values")) {
      return MATERIALS;
    }
    return path.startsWith("/plan") || path.startsWith("/readback") || path.startsWith("/rehearse")
        ? PLAN
        : NOW;
  }

  public String address() {
    return address;
  }

  /** As it stands at the head of the page. */
  public String word() {
    return word;
  }
}
