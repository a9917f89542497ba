package org.seamwright.job;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.seamwright.basis.Notice;
import org.seamwright.flatten.Stretch;
import org.seamwright.flatten.Template;
import org.seamwright.flatten.Templates;

/** Cut templates as JSON, for scripts: figures unrounded, units in the keys. */
public final class TemplatesJson {
  private TemplatesJson() {}

  /**
   * The figures as JSON text.
   *
   * @param of what is covered, as asked for on the command line
   * @param notices of reading and marking; those of the templates follow
   */
  public static String text(
      String of, Templates.Settings settings, Templates templates, List<Notice> notices) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("of", of);
    tree.put("stretchAllowed", settings.stretchShare());
    tree.put("allowanceMm", settings.allowanceMm());
    tree.put("leastWidthMm", settings.leastWidthMm());
    tree.put("areaMm2", templates.areaMm2());
    tree.put("templates", templates.templates().stream().map(TemplatesJson::template).toList());
    tree.put("byHand", templates.byHand().stream().map(TemplatesJson::byHand).toList());
    List<Notice> all = new ArrayList<>(notices);
    all.addAll(templates.notices());
    tree.put("notices", MeasureJson.notices(all));
    return JsonText.of(tree);
  }

  private static Map<String, Object> byHand(Templates.ByHand place) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("why", place.why().name().toLowerCase(Locale.ROOT));
    tree.put("areaMm2", place.areaMm2());
    tree.put("stretch", place.stretchShare());
    tree.put("atMm", Arrays.stream(place.atMm()).boxed().toList());
    return tree;
  }

  private static Map<String, Object> template(Template t) {
    Stretch s = t.layout().stretch();
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("id", t.id());
    tree.put("areaMm2", t.areaMm2());
    tree.put("widthMm", t.widthMm());
    tree.put("heightMm", t.heightMm());
    tree.put("stretch", s.nearlyAll());
    tree.put("stretchMean", s.mean());
    tree.put("stretchWorstFace", s.largest());
    tree.put("faces", t.layout().mesh().faceCount());
    return tree;
  }
}
