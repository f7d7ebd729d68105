package annulus.fit.iso286;

/** Which side of the joint a tolerance belongs to. Capital letters are holes, small ones shafts. */
public enum Member {
  HOLE,
  SHAFT
}
