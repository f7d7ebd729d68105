package annulus.web;

import annulus.report.Html;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;

/** A square code (ISO/IEC 18004) that opens a page, as SVG. */
final class CodePicture {
  private static final int QUIET = 4;

  private CodePicture() {}

  /**
   * The picture.
   *
   * @param address what the code says
   * @param millimetres its width on paper
   */
  static String of(String address, int millimetres) {
    ByteMatrix matrix = matrix(address);
    int size = matrix.getWidth() + 2 * QUIET;
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < matrix.getHeight(); y++) {
      for (int x = 0; x < matrix.getWidth(); x++) {
        if (matrix.get(x, y) == 1) {
          path.append('M').append(x + QUIET).append(' ').append(y + QUIET).append("h1v1h-1z");
        }
      }
    }
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\""
        + millimetres
        + "mm\" height=\""
        + millimetres
        + "mm\" viewBox=\"0 0 "
        + size
        + " "
        + size
        + "\" shape-rendering=\"crispEdges\"><title>"
        + Html.text("Code that opens " + address)
        + "</title><rect width=\"100%\" height=\"100%\" fill=\"#fff\"/><path fill=\"#000\" d=\""
        + path
        + "\"/></svg>\n";
  }

  private static ByteMatrix matrix(String address) {
    try {
      return Encoder.encode(address, ErrorCorrectionLevel.M).getMatrix();
    } catch (WriterException e) {
      throw new IllegalStateException(e);
    }
  }
}
