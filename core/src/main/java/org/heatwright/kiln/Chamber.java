package org.heatwright.kiln;

/** The inside of the kiln. */
public sealed interface Chamber {

  /** Area of the roof, equal to the floor's, m². */
  double floorSquareMetres();

  /** Area of all upright faces, m², the door's included where it stands in front. */
  double uprightSquareMetres();

  double heightMetres();

  /** Area of an open front door, m². */
  double frontSquareMetres();

  /** The longest straight line on the floor, m. */
  double acrossMetres();

  /** Sum of the lengths of all inner edges, m. */
  double edgeMetres();

  /** Number of corners where three faces meet. */
  int corners();

  /** A box. All lengths in m, above zero. */
  record Box(double widthMetres, double depthMetres, double heightMetres) implements Chamber {
    public Box {
      requireLengths(widthMetres, depthMetres, heightMetres);
    }

    @Override
    public double floorSquareMetres() {
      return widthMetres * depthMetres;
    }

    @Override
    public double uprightSquareMetres() {
      return 2 * (widthMetres + depthMetres) * heightMetres;
    }

    @Override
    public double frontSquareMetres() {
      return widthMetres * heightMetres;
    }

    @Override
    public double acrossMetres() {
      return Math.hypot(widthMetres, depthMetres);
    }

    @Override
    public double edgeMetres() {
      return 4 * (widthMetres + depthMetres + heightMetres);
    }

    @Override
    public int corners() {
      return 8;
    }
  }

  /** An upright drum. All lengths in m, above zero. */
  record Drum(double diameterMetres, double heightMetres) implements Chamber {
    public Drum {
      requireLengths(diameterMetres, heightMetres);
    }

    @Override
    public double floorSquareMetres() {
      return Math.PI / 4 * diameterMetres * diameterMetres;
    }

    @Override
    public double uprightSquareMetres() {
      return Math.PI * diameterMetres * heightMetres;
    }

    @Override
    public double frontSquareMetres() {
      return 0.7
          * diameterMetres
          * heightMetres; // our estimate: a front door on a drum is narrower
    }

    @Override
    public double acrossMetres() {
      return diameterMetres;
    }

    @Override
    public double edgeMetres() {
      return 2 * Math.PI * diameterMetres;
    }

    @Override
    public int corners() {
      return 0;
    }
  }

  private static void requireLengths(double... metres) {
    for (double length : metres) {
      if (!(length > 0 && length < 5)) {
        throw new IllegalArgumentException(
            "A chamber length (%s m) must be above zero and below 5 m.".formatted(length));
      }
    }
  }
}
