#include "report/drawing_internal.h"

namespace squaredig::report {
namespace {

// Texts are as wide on every kind of page and at every size: unhinted.
void without_hints(PangoContext* context) {
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options(context, options);
  cairo_font_options_destroy(options);
  pango_context_set_round_glyph_positions(context, FALSE);
}

PangoLayout* new_layout(cairo_t* cairo) {
  PangoContext* context = cairo ? pango_cairo_create_context(cairo)
                                : pango_font_map_create_context(pango_cairo_font_map_get_default());
  without_hints(context);
  PangoLayout* layout = pango_layout_new(context);
  g_object_unref(context);
  return layout;
}

}  // namespace

Layout::Layout(cairo_t* cairo, std::string_view text, const Lettering& lettering)
    : layout_(new_layout(cairo)) {
  PangoFontDescription* font = pango_font_description_new();
  pango_font_description_set_family(font, kFontFamily);
  pango_font_description_set_absolute_size(font, lettering.points * PANGO_SCALE);
  if (lettering.weight == Weight::Bold) pango_font_description_set_weight(font, PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description(layout_, font);
  pango_font_description_free(font);
  pango_layout_set_single_paragraph_mode(layout_, TRUE);
  pango_layout_set_text(layout_, text.data(), static_cast<int>(text.size()));
}

double Layout::width_points() const {
  int width = 0;
  pango_layout_get_size(layout_, &width, nullptr);
  return static_cast<double>(width) / PANGO_SCALE;
}

double Layout::baseline_points() const {
  return static_cast<double>(pango_layout_get_baseline(layout_)) / PANGO_SCALE;
}

std::vector<std::pair<int, int>> Layout::lines_within(double width_mm) const {
  pango_layout_set_width(layout_, static_cast<int>(width_mm * kPointsPerMm * PANGO_SCALE));
  pango_layout_set_wrap(layout_, PANGO_WRAP_WORD_CHAR);
  std::vector<std::pair<int, int>> lines;
  for (int i = 0; i < pango_layout_get_line_count(layout_); ++i) {
    const PangoLayoutLine* line = pango_layout_get_line_readonly(layout_, i);
    lines.emplace_back(line->start_index, line->length);
  }
  return lines;
}

}  // namespace squaredig::report
