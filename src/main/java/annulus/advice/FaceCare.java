package annulus.advice;

import annulus.catalog.Finish;
import annulus.catalog.Material;

/** How a face may be scraped or rubbed without spoiling it, or whoever does it. */
enum FaceCare {
  METAL,
  /** A plating or film that a blade would cut through. */
  FILM,
  PLASTIC,
  /** Cut fibres weaken it, and their dust harms lungs. */
  LAMINATE,
  /** Its dust is poisonous. */
  CADMIUM;

  static FaceCare of(Member member) {
    Material.Kind kind = member.material().kind();
    if (member.finish().id().equals("cadmium-plated")) {
      return CADMIUM;
    } else if (kind == Material.Kind.LAMINATE) {
      return LAMINATE;
    } else if (kind == Material.Kind.PLASTIC) {
      return PLASTIC;
    }
    return member.finish().film() == Finish.Film.BARE ? METAL : FILM;
  }
}
