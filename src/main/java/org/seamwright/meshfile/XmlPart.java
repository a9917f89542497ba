package org.seamwright.meshfile;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import javax.xml.XMLConstants;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Walks over the elements of an XML part, with the JDK's own parser. Document types are refused and
 * nothing outside of the part is ever fetched; elements may nest 64 deep.
 */
final class XmlPart implements AutoCloseable {
  private static final int DEEPEST = 64;

  private final String name;
  private final Refusal refusal;
  private final InputStream stream;
  private final XMLStreamReader reader;
  private int depth;

  /** What comes next in a part. */
  enum Event {
    BEGIN,
    END,
    FINISHED
  }

  private XmlPart(String name, InputStream stream, Refusal refusal) throws MeshFileException {
    this.name = name;
    this.refusal = refusal;
    this.stream = stream;
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, true);
    factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
    factory.setXMLResolver(
        (publicId, systemId, base, namespace) -> {
          throw new XMLStreamException("nothing outside of the part is fetched");
        });
    try {
      reader = factory.createXMLStreamReader(text(stream));
    } catch (XMLStreamException | IOException e) {
      throw broken(e);
    }
  }

  /**
   * The part as text: UTF-8 as 3MF demands, or UTF-16 with its mark, as OPC allows. Decoded here
   * since the JDK's parser prints about malformed bytes.
   */
  private static Reader text(InputStream stream) throws IOException {
    BufferedInputStream bytes = new BufferedInputStream(stream, 1 << 14);
    bytes.mark(4);
    int first = bytes.read();
    int second = bytes.read();
    int third = bytes.read();
    bytes.reset();
    boolean wide = (first == 0xFE && second == 0xFF) || (first == 0xFF && second == 0xFE);
    if (first == 0xEF && second == 0xBB && third == 0xBF) {
      bytes.skipNBytes(3);
    }
    Charset charset = wide ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8;
    return new InputStreamReader(bytes, charset.newDecoder());
  }

  /** Opens a part of an archive. */
  static XmlPart open(ZipArchive archive, String name, Refusal refusal) throws MeshFileException {
    return new XmlPart(name, archive.open(name), refusal);
  }

  /** Goes to the next beginning or end of an element. */
  Event next() throws MeshFileException {
    try {
      while (reader.hasNext()) {
        switch (reader.next()) {
          case XMLStreamConstants.START_ELEMENT -> {
            if (++depth > DEEPEST) {
              throw refuse("its elements are nested too deeply", Refusal.EXPORT_AGAIN);
            }
            return Event.BEGIN;
          }
          case XMLStreamConstants.END_ELEMENT -> {
            depth--;
            return Event.END;
          }
          case XMLStreamConstants.DTD, XMLStreamConstants.ENTITY_REFERENCE ->
              throw refuse(
                  "it has a document type or entities, which 3MF forbids", Refusal.EXPORT_AGAIN);
          default -> {}
        }
      }
      return Event.FINISHED;
    } catch (XMLStreamException e) {
      throw broken(e);
    } catch (RuntimeException e) {
      // The JDK's parser lets unchecked exceptions through for some malformed texts.
      throw broken(e);
    }
  }

  private MeshFileException broken(Exception e) {
    for (Throwable cause = e; cause != null; cause = nested(cause)) {
      if (cause instanceof MeshFileException refused) {
        return refused;
      }
    }
    String said = e.getMessage() == null ? "" : e.getMessage();
    if (nested(e) instanceof CharacterCodingException || e instanceof CharacterCodingException) {
      said = "its text is not UTF-8";
    }
    int message = said.indexOf("Message: ");
    said = message < 0 ? said : said.substring(message + "Message: ".length());
    said = said.lines().findFirst().orElse("").replaceFirst("[.]$", "");
    return new MeshFileException(
        refusal.file(),
        place(),
        "the XML is not valid" + (said.isBlank() ? "" : ": " + said.replaceAll("\\p{Cntrl}", "?")),
        "Copy or download the file again, or export it again.",
        e);
  }

  private static Throwable nested(Throwable cause) {
    return cause instanceof XMLStreamException stax && stax.getNestedException() != null
        ? stax.getNestedException()
        : cause.getCause();
  }

  /** Name of the element without its prefix. */
  String element() {
    return reader.getLocalName();
  }

  /** Namespace of the element. */
  String namespace() {
    return reader.getNamespaceURI() == null ? "" : reader.getNamespaceURI();
  }

  /** Namespace that a prefix stands for here; empty if none. */
  String namespaceOf(String prefix) {
    String uri = reader.getNamespaceURI(prefix);
    return uri == null ? "" : uri;
  }

  /** Value of an attribute without a prefix; null if it is not there. */
  String attribute(String key) {
    for (int i = 0; i < reader.getAttributeCount(); i++) {
      String space = reader.getAttributeNamespace(i);
      if (reader.getAttributeLocalName(i).equals(key) && (space == null || space.isEmpty())) {
        return reader.getAttributeValue(i);
      }
    }
    return null;
  }

  /** Value of an attribute of a namespace; null if it is not there. */
  String attribute(String space, String key) {
    return reader.getAttributeValue(space, key);
  }

  /** Value of an attribute that must be there. */
  String required(String key) throws MeshFileException {
    String value = attribute(key);
    if (value == null) {
      throw refuse(
          "the element " + Refusal.shorten(element()) + " lacks " + key, Refusal.EXPORT_AGAIN);
    }
    return value.strip();
  }

  /** A finite number that must be there. */
  double number(String key) throws MeshFileException {
    String text = required(key);
    double value = Decimals.parse(text);
    if (!(Math.abs(value) <= Float.MAX_VALUE)) {
      throw refusal.number(place(), text);
    }
    return value;
  }

  /** A whole number from 0 up that must be there. */
  int index(String key) throws MeshFileException {
    String text = required(key);
    long value = 0;
    for (int i = 0; i < text.length(); i++) {
      char digit = text.charAt(i);
      value = digit >= '0' && digit <= '9' && value >= 0 ? 10 * value + (digit - '0') : -1;
      value = value > Integer.MAX_VALUE ? -1 : value;
    }
    if (value < 0 || text.isEmpty()) {
      throw refuse(
          key + "=\"" + Refusal.shorten(text) + "\" is no whole number from 0 up",
          Refusal.EXPORT_AGAIN);
    }
    return (int) value;
  }

  /** Where the parser is: part and line. */
  String place() {
    int line = reader == null ? 0 : reader.getLocation().getLineNumber();
    return line > 0 ? name + ", line " + line : name;
  }

  MeshFileException refuse(String problem, String remedy) {
    return refusal.at(place(), problem, remedy);
  }

  @Override
  public void close() throws MeshFileException {
    try {
      stream.close();
    } catch (IOException e) {
      throw broken(e);
    }
  }
}
