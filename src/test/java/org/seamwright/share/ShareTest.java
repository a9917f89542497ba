package org.seamwright.share;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamwright.basis.Progress;
import org.seamwright.job.PlannedJob;
import org.seamwright.job.Planner;
import org.seamwright.picture.Background;
import org.seamwright.picture.Image;
import org.seamwright.picture.Letterhead;
import org.seamwright.picture.Pictures;
import org.seamwright.picture.View;
import org.seamwright.region.Treatment;
import org.seamwright.testsupport.Chromium;
import org.seamwright.testsupport.Reference;

/** The page and the glTF file of the sample plaque. */
class ShareTest {
  private static PlannedJob planned;
  private static String page;

  @TempDir private static Path folder;

  @BeforeAll
  static void plan() throws Exception {
    planned = Planner.plan(Path.of("models/plaque.json"), Progress.NONE);
    page = SharePage.of(planned, Progress.NONE);
    Files.writeString(folder.resolve("plaque.html"), page);
  }

  @Test
  void theShopIsNamedAndItsNameCannotBreakThePage() {
    Image logo =
        Pictures.plain(Pictures.customerScene(planned.map()), View.FRONT, 90, 60, Background.WHITE);
    String named =
        SharePage.of(
            planned,
            new Letterhead("A & B <\"test\">", List.of("1 Invented Street"), Optional.of(logo)),
            Progress.NONE);
    assertThat(named)
        .contains("<strong>A &amp; B &lt;&quot;test&quot;&gt;</strong>", "1 Invented Street")
        .contains(
            "alt=\"Logo of A &amp; B &lt;&quot;test&quot;&gt;\" src=\"data:image/png;base64,");
    assertThat(page).doesNotContain("<div id=\"shop\">", "%SHOP%");
  }

  private static JsonNode data() throws Exception {
    int from = page.indexOf("id=\"data\">") + 10;
    return new ObjectMapper().readTree(page.substring(from, page.indexOf("</script>", from)));
  }

  @Test
  void pageLoadsNothingFromElsewhere() {
    assertThat(page)
        .contains("default-src 'none'")
        .doesNotContain("http://", "https://", "src=\"//");
    assertThat(page.length()).isLessThan(6_000_000);
    assertThat(page).doesNotContain("%TITLE%", "%DATA%", "%BEFORE%", "%AFTER%");
    assertThat(SharePage.of(planned, Progress.NONE)).isEqualTo(page);
  }

  @Test
  void regionsBearTheAreasOfTheFullModel() {
    ShareModel model = ShareModel.of(planned);
    double gold =
        model.regions().stream()
            .filter(r -> r.kind() == ShareModel.Kind.SECTION)
            .mapToDouble(ShareModel.Region::areaMm2)
            .sum();
    assertThat(gold).isCloseTo(planned.map().areaMm2(Treatment.PLATE), within(1e-6 * gold));
    assertThat(model.regions()).hasSize(planned.sections().sections().size() + 1);
  }

  /** Places unpacked from 16 bits lie on the model's box; every triangle is within its region. */
  @Test
  void dataUnpacksToTheModel() throws Exception {
    JsonNode data = data();
    ByteBuffer places =
        ByteBuffer.wrap(Base64.getDecoder().decode(data.get("places").asText()))
            .order(ByteOrder.LITTLE_ENDIAN);
    int least = 65_535;
    int most = 0;
    for (int at = 0; at < places.capacity(); at += 10) {
      least = Math.min(least, places.getShort(at) & 0xFFFF);
      most = Math.max(most, places.getShort(at) & 0xFFFF);
    }
    assertThat(least).isZero();
    assertThat(most).isEqualTo(65_535);
    // The shape is simplified to within a hundredth of a millimetre.
    assertThat(data.get("size").get(0).asDouble()).isCloseTo(220, within(0.01));
    JsonNode begin = data.get("begin");
    int index = Base64.getDecoder().decode(data.get("index").asText()).length / 12;
    assertThat(begin.get(begin.size() - 1).asInt()).isEqualTo(index);
    assertThat(begin.size()).isEqualTo(data.get("regions").size() + 1);
  }

  @Test
  void glbPassesTheValidatorOfItsMakers() throws Exception {
    Path file = folder.resolve("plaque.glb");
    Files.write(file, GlbFile.of(planned, Progress.NONE));
    Path modules = Path.of("target", "node", "node_modules");
    Reference.require(
        "gltf-validator", Files.isDirectory(modules.resolve("gltf-validator")), "npm");
    String script =
        "require('gltf-validator').validateBytes(new Uint8Array(require('fs').readFileSync("
            + "process.argv[1]))).then(r=>console.log(JSON.stringify(r)))";
    Process node =
        new ProcessBuilder("node", "-e", script, file.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .directory(modules.getParent().toFile())
            .start();
    JsonNode report = new ObjectMapper().readTree(node.getInputStream());
    assertThat(report.get("issues").get("numErrors").asInt()).as(report.toString()).isZero();
    assertThat(report.get("issues").get("numWarnings").asInt()).as(report.toString()).isZero();
    assertThat(report.get("info").get("materialCount").asInt())
        .isEqualTo(planned.sections().sections().size() + 1);
  }

  /** In a browser: opened, looked at, tapped, switched, turned. */
  @Test
  void pageWorksInABrowser() throws Exception {
    Reference.require("chromium", Chromium.isThere(), "apt");
    try (Chromium browser = Chromium.start(folder.resolve("profile"), 1000, 700)) {
      browser.open(folder.resolve("plaque.html"));
      browser.until("document.documentElement && document.documentElement.dataset.ready");
      assertThat(browser.eval("document.documentElement.dataset.ready")).isEqualTo("3d");
      browser.until("canvas.width > 300 && !waiting");
      // The middle of the view is the middle of the plaque, and gold goes there.
      double x = Double.parseDouble(browser.eval("canvas.clientWidth / 2 + canvas.offsetLeft"));
      double y =
          Double.parseDouble(
              browser.eval("canvas.getBoundingClientRect().y + canvas.clientHeight / 2"));
      int gilded = pixel(browser, x, y);
      assertThat(gilded >> 16 & 255).as("gold is red over blue").isGreaterThan((gilded & 255) + 40);
      browser.click(x, y);
      browser.until("document.querySelector('#told').textContent");
      assertThat(browser.eval("document.querySelector('#told').textContent"))
          .startsWith("Section ")
          .endsWith("gold goes here");
      assertThat(browser.eval("document.querySelectorAll('#list [aria-pressed=true]').length"))
          .isEqualTo("1");
      browser.click("#list li:last-child button");
      assertThat(browser.eval("document.querySelector('#told').textContent"))
          .startsWith("Stays as it is");
      browser.eval("choose(-1)");
      browser.click("#today");
      Thread.sleep(300);
      int today = pixel(browser, x, y);
      assertThat(Math.abs((today >> 16 & 255) - (today & 255))).as("grey").isLessThan(40);
      String before = browser.eval("String(state.yaw)");
      browser.drag(x, y, x + 120, y + 10);
      assertThat(browser.eval("String(state.yaw)")).isNotEqualTo(before);
      browser.click("#home");
      assertThat(browser.eval("String(state.yaw)")).isEqualTo(before);
      Path shots = Files.createDirectories(Path.of("target", "screenshots"));
      browser.click("#gilded");
      browser.click("#sections");
      Thread.sleep(300);
      Files.write(shots.resolve("page.png"), browser.screenshot());
    }
  }

  private static int pixel(Chromium browser, double x, double y) throws Exception {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(browser.screenshot()));
    return image.getRGB((int) x, (int) y);
  }
}
