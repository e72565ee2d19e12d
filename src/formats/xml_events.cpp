#include "formats/xml_events.h"

#include <libxml/SAX2.h>
#include <libxml/parser.h>

#include <exception>
#include <memory>
#include <vector>

#include "formats/input_file.h"

namespace squaredig::formats {
namespace {

constexpr int kDeepest = 64;
constexpr std::size_t kChunk = std::size_t{1} << 18;

std::string_view text_of(const xmlChar* text) {
  return text == nullptr ? std::string_view() : reinterpret_cast<const char*>(text);
}

std::string_view text_between(const xmlChar* begin, const xmlChar* end) {
  return {reinterpret_cast<const char*>(begin), static_cast<std::size_t>(end - begin)};
}

// libxml2 is C: no exception may pass through it, so callbacks keep theirs until the chunk is done.
struct Reading {
  xmlParserCtxtPtr parser = nullptr;
  XmlHandler& handler;
  FaultList& faults;
  std::string file;
  int depth = 0;
  bool stopped = false;
  std::exception_ptr thrown;
  std::vector<XmlAttribute> attributes;

  Place here() const {
    const int line = parser == nullptr ? 1 : xmlSAX2GetLineNumber(parser);
    const int column = parser == nullptr ? 1 : xmlSAX2GetColumnNumber(parser);
    return {file, line < 1 ? 1 : line, column < 1 ? 1 : column};
  }
  void stop() {
    stopped = true;
    if (parser != nullptr) xmlStopParser(parser);
  }
  void fault(Place place, std::string found, std::string needed, std::string remedy) {
    if (stopped) return;
    faults.add(std::move(place), std::move(found), std::move(needed), std::move(remedy));
    stop();
  }
  template <class Work>
  void guarded(Work work) {
    if (stopped) return;
    try {
      work();
    } catch (...) {
      thrown = std::current_exception();
      stop();
    }
  }
};

Reading& reading_of(void* context) { return *static_cast<Reading*>(context); }

void on_start(void* context, const xmlChar* name, const xmlChar*, const xmlChar* space, int,
              const xmlChar**, int count, int, const xmlChar** attributes) {
  Reading& reading = reading_of(context);
  if (++reading.depth > kDeepest)
    reading.fault(reading.here(), "elements nested more than 64 deep", "a LandXML document",
                  "export it again");
  reading.guarded([&] {
    reading.attributes.clear();
    for (int i = 0; i < count; ++i, attributes += 5)
      if (attributes[2] == nullptr)  // those of other namespaces say nothing to us
        reading.attributes.push_back(
            {text_of(attributes[0]), std::string(text_between(attributes[3], attributes[4]))});
    reading.handler.start({text_of(name), text_of(space), reading.attributes, reading.here()});
  });
}

void on_end(void* context, const xmlChar*, const xmlChar*, const xmlChar*) {
  Reading& reading = reading_of(context);
  --reading.depth;
  reading.guarded([&] { reading.handler.end(); });
}

void on_text(void* context, const xmlChar* text, int size) {
  Reading& reading = reading_of(context);
  reading.guarded([&] { reading.handler.text(text_between(text, text + size)); });
}

void on_doctype(void* context, const xmlChar*, const xmlChar*, const xmlChar*) {
  Reading& reading = reading_of(context);
  reading.fault(reading.here(), "a DOCTYPE", "a document without one: nothing of it is followed",
                "take the DOCTYPE out");
}

// What is wrong, in words of our own.
std::string words_of(const xmlError& error, bool cut_off) {
  if (cut_off) return "an XML document that ends too early";
  switch (error.code) {
    case XML_ERR_INVALID_ENCODING:
    case XML_ERR_INVALID_CHAR:
      return "characters that are not in the encoding which the file names";
    case XML_ERR_TAG_NAME_MISMATCH:
      return "an XML element that is closed by another name";
    case XML_ERR_UNDECLARED_ENTITY:
      return "an & with a name that is not known";
    default:
      return "text that is not XML";
  }
}

void on_error(void* context, xmlErrorPtr error) {
  Reading& reading = reading_of(context);
  if (error == nullptr || error->level == XML_ERR_WARNING || error->level == XML_ERR_NONE) return;
  const bool cut_off = error->code == XML_ERR_DOCUMENT_END && reading.depth > 0;
  Place place{reading.file, error->line < 1 ? 1 : error->line, error->int2 < 1 ? 1 : error->int2};
  reading.fault(std::move(place), words_of(*error, cut_off), "a whole XML document",
                "export the file again");
}

xmlSAXHandler callbacks() {
  xmlSAXHandler sax{};
  sax.initialized = XML_SAX2_MAGIC;
  sax.startElementNs = on_start;
  sax.endElementNs = on_end;
  sax.characters = on_text;
  sax.ignorableWhitespace = on_text;
  sax.cdataBlock = on_text;
  sax.internalSubset = on_doctype;
  sax.serror = on_error;
  return sax;
}

using Parser = std::unique_ptr<xmlParserCtxt, decltype(&xmlFreeParserCtxt)>;

void feed(Reading& reading, InputFile& file, Parser& parser, xmlSAXHandler& sax) {
  std::vector<char> chunk(file.chunk(kChunk));
  bool last = false;
  while (!last && !reading.stopped) {
    const std::size_t got = file.read(chunk);
    last = got < chunk.size();
    std::size_t begin = 0;
    if (parser == nullptr) {
      if (got == 0)
        return reading.fault({reading.file}, "an empty file", "a LandXML document",
                             "export it again");
      // the first bytes tell the encoding
      begin = got < 4 ? 0 : 4;
      parser.reset(
          xmlCreatePushParserCtxt(&sax, &reading, chunk.data(), static_cast<int>(begin), nullptr));
      if (parser == nullptr) throw std::bad_alloc();
      reading.parser = parser.get();
      // NOENT: without it "&amp;" stays "&#38;" in attributes; no other entity can exist here
      xmlCtxtUseOptions(parser.get(), XML_PARSE_NONET | XML_PARSE_NOENT | XML_PARSE_HUGE);
    }
    xmlParseChunk(parser.get(), chunk.data() + begin, static_cast<int>(got - begin), last ? 1 : 0);
  }
}

}  // namespace

std::optional<std::string> XmlElement::value(std::string_view attribute) const {
  for (const XmlAttribute& a : attributes)
    if (a.name == attribute) return a.value;
  return std::nullopt;
}

std::string read_xml(const SourceFile& source, XmlHandler& handler, FaultList& faults) {
  InputFile file(source);
  Reading reading{nullptr, handler, faults, source.name, 0, false, nullptr, {}};
  xmlSAXHandler sax = callbacks();
  Parser parser(nullptr, &xmlFreeParserCtxt);
  feed(reading, file, parser, sax);
  if (reading.thrown) std::rethrow_exception(reading.thrown);
  if (parser != nullptr && parser->wellFormed == 0)
    reading.fault({source.name}, "text that is not XML", "a whole XML document",
                  "export the file again");
  faults.throw_if_any();
  return file.sha256();
}

}  // namespace squaredig::formats
