package org.seamwright.testsupport;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;

/** A headless Chromium with one page, driven over its DevTools protocol. */
public final class Chromium implements AutoCloseable {
  private static final List<String> NAMES = List.of("chromium", "chromium-browser");
  private static final int PATIENCE_S = 120;
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Process process;
  private final WebSocket socket;
  private final AtomicInteger next = new AtomicInteger();
  private final Map<Integer, CompletableFuture<JsonNode>> waiting = new ConcurrentHashMap<>();
  private String session = "";

  private Chromium(Process process, WebSocket socket) {
    this.process = process;
    this.socket = socket;
  }

  /** Whether one is installed. */
  public static boolean isThere() {
    return program() != null;
  }

  private static Path program() {
    for (String folder : System.getenv().getOrDefault("PATH", "").split(":")) {
      for (String name : NAMES) {
        Path program = Path.of(folder, name);
        if (Files.isExecutable(program)) {
          return program;
        }
      }
    }
    return null;
  }

  /** Starts one with an empty page; {@code profile} is a folder of its own. */
  public static Chromium start(Path profile, int width, int height) throws Exception {
    Process process =
        new ProcessBuilder(
                program().toString(),
                "--headless",
                "--no-sandbox",
                "--use-angle=swiftshader",
                "--enable-unsafe-swiftshader",
                "--ignore-gpu-blocklist",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--remote-debugging-port=0",
                "--user-data-dir=" + profile,
                "--window-size=" + width + "," + height,
                "about:blank")
            .redirectErrorStream(true)
            .start();
    CompletableFuture<String> address = new CompletableFuture<>();
    Thread reader =
        new Thread(
            () -> {
              try (BufferedReader lines =
                  new BufferedReader(
                      new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
                for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                  if (line.contains("DevTools listening on ")) {
                    address.complete(line.substring(line.indexOf("ws://")).strip());
                  }
                }
              } catch (IOException e) {
                address.completeExceptionally(e);
              }
            });
    reader.setDaemon(true);
    reader.start();
    CompletableFuture<Chromium> made = new CompletableFuture<>();
    WebSocket socket =
        HttpClient.newHttpClient()
            .newWebSocketBuilder()
            .buildAsync(
                URI.create(address.get(PATIENCE_S, TimeUnit.SECONDS)),
                new WebSocket.Listener() {
                  private final StringBuilder text = new StringBuilder();

                  @Override
                  public CompletionStage<?> onText(
                      WebSocket from, CharSequence part, boolean last) {
                    text.append(part);
                    if (last) {
                      made.join().received(text.toString());
                      text.setLength(0);
                    }
                    from.request(1);
                    return null;
                  }
                })
            .get(PATIENCE_S, TimeUnit.SECONDS);
    Chromium browser = new Chromium(process, socket);
    made.complete(browser);
    browser.attach(width, height);
    return browser;
  }

  private void attach(int width, int height) throws Exception {
    JsonNode targets = call("Target.getTargets", Map.of()).get("targetInfos");
    String page = "";
    for (JsonNode target : targets) {
      page = target.get("type").asText().equals("page") ? target.get("targetId").asText() : page;
    }
    session =
        call("Target.attachToTarget", Map.of("targetId", page, "flatten", true))
            .get("sessionId")
            .asText();
    call("Page.enable", Map.of());
    call(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
  }

  private void received(String text) {
    try {
      JsonNode message = JSON.readTree(text);
      if (message.has("id")) {
        CompletableFuture<JsonNode> answer = waiting.remove(message.get("id").asInt());
        if (message.has("error")) {
          answer.completeExceptionally(new IOException(message.get("error").toString()));
        } else {
          answer.complete(message.get("result"));
        }
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private JsonNode call(String method, Map<String, ?> params) throws Exception {
    int id = next.incrementAndGet();
    ObjectNode message = JSON.createObjectNode();
    message.put("id", id).put("method", method);
    message.set("params", JSON.valueToTree(params));
    if (!session.isEmpty()) {
      message.put("sessionId", session);
    }
    CompletableFuture<JsonNode> answer = new CompletableFuture<>();
    waiting.put(id, answer);
    socket.sendText(message.toString(), true).get(PATIENCE_S, TimeUnit.SECONDS);
    return answer.get(PATIENCE_S, TimeUnit.SECONDS);
  }

  /** Opens a page. */
  public void open(Path file) throws Exception {
    call("Page.navigate", Map.of("url", file.toUri().toString()));
  }

  /** What an expression in the page comes to, as text. */
  public String eval(String expression) throws Exception {
    JsonNode result =
        call("Runtime.evaluate", Map.of("expression", expression, "returnByValue", true));
    if (result.has("exceptionDetails")) {
      throw new IOException(result.get("exceptionDetails").toString());
    }
    JsonNode value = result.get("result").get("value");
    return value == null ? "" : value.asText();
  }

  /** Waits until an expression holds. */
  public void until(String expression) throws Exception {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
    while (!eval("String(Boolean(" + expression + "))").equals("true")) {
      if (System.nanoTime() > end) {
        throw new TimeoutException(expression);
      }
      Thread.sleep(50);
    }
  }

  /** A real click of the mouse, in pixels of the page. */
  public void click(double x, double y) throws Exception {
    mouse("mouseMoved", x, y, 0);
    mouse("mousePressed", x, y, 1);
    mouse("mouseReleased", x, y, 1);
  }

  /** A click on an element. */
  public void click(String selector) throws Exception {
    String box = "document.querySelector('" + selector + "').getBoundingClientRect()";
    double x = Double.parseDouble(eval(box + ".x + " + box + ".width / 2"));
    double y = Double.parseDouble(eval(box + ".y + " + box + ".height / 2"));
    click(x, y);
  }

  /** Drags with the left button. */
  public void drag(double fromX, double fromY, double toX, double toY) throws Exception {
    mouse("mousePressed", fromX, fromY, 1);
    for (int i = 1; i <= 5; i++) {
      mouse("mouseMoved", fromX + (toX - fromX) * i / 5, fromY + (toY - fromY) * i / 5, 1);
    }
    mouse("mouseReleased", toX, toY, 1);
  }

  private void mouse(String type, double x, double y, int buttons) throws Exception {
    call(
        "Input.dispatchMouseEvent",
        Map.of(
            "type", type, "x", x, "y", y, "button", "left", "buttons", buttons, "clickCount", 1));
  }

  /** What the page shows, as PNG. */
  public byte[] screenshot() throws Exception {
    String data = call("Page.captureScreenshot", Map.of("format", "png")).get("data").asText();
    return Base64.getDecoder().decode(data);
  }

  @Override
  public void close() {
    socket.abort();
    process.descendants().forEach(ProcessHandle::destroy);
    process.destroy();
    // Its files in the profile are removed after it.
    process.onExit().orTimeout(10, TimeUnit.SECONDS).exceptionally(e -> process).join();
  }
}
