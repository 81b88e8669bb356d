package org.heatwright.app.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** Writes our records as JSON (RFC 8259), the same text for the same values. */
public final class Json {

  /** Finer than anything a kiln does, coarse enough to hide conversion noise. */
  private static final int DECIMALS = 6;

  private static final ObjectMapper MAPPER =
      new ObjectMapper()
          .registerModule(new Jdk8Module())
          .registerModule(
              new SimpleModule()
                  .addSerializer(Double.class, new Plain())
                  .addSerializer(double.class, new Plain()))
          .enable(SerializationFeature.INDENT_OUTPUT);

  private static final ObjectMapper COMPACT =
      MAPPER.copy().disable(SerializationFeature.INDENT_OUTPUT);

  private Json() {}

  /** The record on one line, to stand inside a page's script element. */
  public static String inPage(Record value) {
    try {
      return COMPACT.writeValueAsString(value).replace("<", "\\u003c");
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("A record of ours cannot be written as JSON.", e);
    }
  }

  /** The record as indented text, with a line break at the end. */
  public static String text(Record value) {
    try {
      return MAPPER.writeValueAsString(value) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("A record of ours cannot be written as JSON.", e);
    }
  }

  /** A number without exponent or conversion noise. */
  private static final class Plain extends JsonSerializer<Double> {
    @Override
    public void serialize(Double value, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      BigDecimal rounded =
          BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_EVEN).stripTrailingZeros();
      out.writeNumber(rounded.scale() < 0 ? rounded.setScale(0) : rounded);
    }
  }
}
