import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.lang.module.ModuleReference;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.spi.ToolProvider;
import java.util.stream.Collector;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Makes a self-contained image of the program for the machine this runs on: a Java runtime with the
 * modules needed and no others, the program in it, a launcher, and an archive of loaded classes.
 *
 * <p>The program and its libraries become one module of the runtime. Java 17 takes an archive of
 * classes only where the jars lie at the paths they had when it was written; classes in the runtime
 * itself have no such paths, so the image may be moved. A training run tells which classes.
 *
 * <p>usage: java src/image/MakeImage.java TARGET VERSION TYPE, from the project's folder. TARGET
 * holds the jar and lib/. TYPE is app-image or, for an installer beside it, a type that jpackage
 * knows on this machine, such as deb, msi or dmg.
 */
final class MakeImage {
  private static final String NAME = "seamwright";
  private static final String MODULE = "org.seamwright";
  private static final String MAIN = "org.seamwright.cli.Main";
  private static final String ENDING = "seamwright";
  private static final String JOB_TYPE = "application/x-seamwright-job+json";

  /**
   * What the launcher starts Java with. The parallel collector does least beside work in large
   * arrays; half of the memory may be used, since a piece of many faces needs it.
   */
  private static final List<String> OPTIONS =
      List.of("-Xshare:auto", "-XX:+UseParallelGC", "-XX:MaxRAMPercentage=50", "-XX:-UsePerfData");

  private static final List<String> ABOUT =
      List.of(
          "--description",
          "Plans hand plating of irregular pieces",
          "--vendor",
          "The Seamwright authors");

  private static final int[] ICON_SIDES = {16, 32, 48, 64, 128, 256};

  /** The window of a training run is closed when no class has been loaded for so long, s. */
  private static final int QUIET_S = 3;

  private static final int MOST_WINDOW_S = 60;

  private final Path target;
  private final Path work;
  private final String version;
  private final Os os = Os.here();

  private enum Os {
    LINUX("Linux"),
    MAC("Mac"),
    WINDOWS("Windows");

    /** The folder of its libraries in the jar of SQLite. */
    final String folder;

    Os(String folder) {
      this.folder = folder;
    }

    static Os here() {
      String name = System.getProperty("os.name").toLowerCase(Locale.ROOT);
      return name.contains("win") ? WINDOWS : name.contains("mac") ? MAC : LINUX;
    }
  }

  private MakeImage(Path target, String version) {
    this.target = target;
    this.version = version;
    this.work = target.resolve("image-work");
  }

  public static void main(String[] args) throws IOException, InterruptedException {
    if (Stream.of("jdeps", "jmod", "jlink", "jpackage")
        .anyMatch(tool -> ToolProvider.findFirst(tool).isEmpty())) {
      System.err.println("No image made: this Java has no jpackage. Build with a whole JDK.");
      System.exit("true".equals(System.getenv("CI")) ? 1 : 0);
    }
    new MakeImage(Path.of(args[0]).toAbsolutePath(), args[1]).make(args[2]);
  }

  private void make(String type) throws IOException, InterruptedException {
    delete(work);
    Path image = target.resolve("image");
    delete(image);
    List<Path> graphics = jars(true);
    Path classes = Files.createDirectories(work.resolve("classes"));
    Path legal = Files.createDirectories(work.resolve("legal"));
    Services services = merge(jars(false), classes, legal);
    describe(classes, graphics, services);
    Path modules = Files.createDirectories(work.resolve("jmods"));
    run(
        "jmod",
        "create",
        "--class-path",
        classes.toString(),
        "--legal-notices",
        legal.toString(),
        modules.resolve(MODULE + ".jmod").toString());
    for (Path jar : graphics) {
      graphicsModule(jar, modules);
    }
    Path runtime = link(modules);
    archive(runtime);
    Path made = pack(runtime, image);
    if (!type.equals("app-image")) {
      installer(type, made, image);
    }
    System.out.printf(Locale.ROOT, "Image: %s, %.0f MB%n", made, size(made) / 1e6);
  }

  /**
   * The program's jar and its libraries, or those of JavaFX alone, which are modules as they are.
   */
  private List<Path> jars(boolean graphics) throws IOException {
    try (Stream<Path> libraries = Files.list(target.resolve("lib"))) {
      List<Path> found =
          libraries
              .filter(jar -> jar.toString().endsWith(".jar"))
              .filter(jar -> jar.getFileName().toString().startsWith("javafx-") == graphics)
              .sorted()
              .collect(Collectors.toCollection(ArrayList::new));
      if (graphics) {
        // Beside each jar for a platform lies an empty one that only names it.
        found.removeIf(jar -> descriptor(jar).map(ModuleDescriptor::isAutomatic).orElse(true));
      } else {
        found.add(target.resolve(NAME + ".jar"));
      }
      return found;
    }
  }

  private static Optional<ModuleDescriptor> descriptor(Path jar) {
    return ModuleFinder.of(jar).findAll().stream().map(ModuleReference::descriptor).findFirst();
  }

  /** Services that the merged jars look for, and what they provide of each. */
  private record Services(Set<String> used, Map<String, Set<String>> provided) {}

  /** Unpacks jars into one folder, the licences of each into a folder of its own. */
  private Services merge(List<Path> jars, Path classes, Path legal) throws IOException {
    Services services = new Services(new TreeSet<>(), new TreeMap<>());
    for (Path file : jars) {
      descriptor(file).ifPresent(d -> services.used.addAll(d.uses()));
      try (JarFile jar = new JarFile(file.toFile(), false, JarFile.OPEN_READ, Runtime.version())) {
        for (JarEntry entry : jar.versionedStream().filter(e -> !e.isDirectory()).toList()) {
          String name = entry.getName();
          byte[] bytes;
          try (InputStream in = jar.getInputStream(entry)) {
            bytes = in.readAllBytes();
          }
          if (name.startsWith("META-INF/services/")) {
            Set<String> all =
                services.provided.computeIfAbsent(
                    name.substring(name.lastIndexOf('/') + 1), key -> new LinkedHashSet<>());
            new String(bytes, StandardCharsets.UTF_8)
                .lines()
                .map(line -> line.replaceAll("#.*", "").strip())
                .filter(line -> !line.isEmpty())
                .forEach(all::add);
          } else if (name.matches("META-INF/.*(LICEN[CS]E|NOTICE|COPYING)[^/]*")) {
            write(
                legal.resolve(jarName(file)).resolve(name.substring(name.lastIndexOf('/') + 1)),
                bytes);
          } else if (!name.startsWith("META-INF/")
              && !name.equals("module-info.class")
              && isForHere(name)) {
            Path to = classes.resolve(name);
            if (Files.exists(to) && !Arrays.equals(Files.readAllBytes(to), bytes)) {
              throw new IOException(name + " is in two jars, the second " + file);
            }
            write(to, bytes);
          }
        }
      }
    }
    services.used.addAll(services.provided.keySet());
    services.used.removeIf(
        service -> !Files.exists(classes.resolve(service.replace('.', '/') + ".class")));
    return services;
  }

  private static String jarName(Path jar) {
    return jar.getFileName().toString().replaceAll("\\.jar$", "");
  }

  /** Whether an entry is not a library for another machine. */
  private boolean isForHere(String name) {
    String natives = "org/sqlite/native/";
    String machine = System.getProperty("os.arch").replace("amd64", "x86_64");
    return !name.startsWith(natives) || name.startsWith(natives + os.folder + "/" + machine + "/");
  }

  private static void write(Path to, byte[] bytes) throws IOException {
    Files.createDirectories(to.getParent());
    Files.write(to, bytes);
  }

  /** Writes the description of the merged module: open, and needing what its classes use. */
  private void describe(Path classes, List<Path> graphics, Services services) throws IOException {
    String path = graphics.stream().map(Path::toString).collect(pathList());
    String needed =
        run(
                "jdeps",
                "--ignore-missing-deps",
                "--multi-release",
                "base",
                "--print-module-deps",
                "--module-path",
                path,
                classes.toString())
            .strip();
    StringBuilder text = new StringBuilder("open module " + MODULE + " {\n");
    // Used by name alone, so that jdeps doesn't see it: what gives mapped files back early.
    text.append("  requires jdk.unsupported;\n");
    for (String module : needed.split(",")) {
      text.append("  requires ").append(module).append(";\n");
    }
    text.append("  exports org.seamwright.cli;\n");
    services.used.forEach(s -> text.append("  uses ").append(s).append(";\n"));
    services.provided.forEach(
        (s, by) ->
            text.append("  provides ")
                .append(s)
                .append(" with ")
                .append(String.join(", ", by))
                .append(";\n"));
    Path source = work.resolve("module-info.java");
    Files.writeString(source, text.append("}\n"));
    run(
        "javac",
        "--release",
        "17",
        "-d",
        classes.toString(),
        "--module-path",
        path,
        "--module-version",
        version,
        "--patch-module",
        MODULE + "=" + classes,
        source.toString());
  }

  private static Collector<CharSequence, ?, String> pathList() {
    return Collectors.joining(File.pathSeparator);
  }

  /** A module of JavaFX with its native libraries where the runtime looks for them. */
  private void graphicsModule(Path jar, Path modules) throws IOException {
    String name = descriptor(jar).orElseThrow().name();
    Path classes = work.resolve(name);
    Path natives = Files.createDirectories(work.resolve(name + "-natives"));
    try (JarFile open = new JarFile(jar.toFile())) {
      for (JarEntry entry : open.stream().filter(e -> !e.isDirectory()).toList()) {
        boolean isNative = entry.getName().matches("[^/]*\\.(so|dll|dylib)");
        try (InputStream in = open.getInputStream(entry)) {
          write((isNative ? natives : classes).resolve(entry.getName()), in.readAllBytes());
        }
      }
    }
    run(
        "jmod",
        "create",
        "--class-path",
        classes.toString(),
        "--libs",
        natives.toString(),
        modules.resolve(name + ".jmod").toString());
  }

  private Path link(Path modules) throws IOException {
    Path runtime = work.resolve("runtime");
    // The code pages of consoles on Windows are in a module that no class names.
    String roots = MODULE + (os == Os.WINDOWS ? ",jdk.charsets" : "");
    run(
        "jlink",
        "--module-path",
        modules.toString(),
        "--add-modules",
        roots,
        "--compress",
        "2",
        "--no-header-files",
        "--no-man-pages",
        "--output",
        runtime.toString());
    return runtime;
  }

  /** Runs the program to learn which classes it loads, and archives them in the runtime. */
  private void archive(Path runtime) throws IOException, InterruptedException {
    Path trained = Files.createDirectories(work.resolve("trained"));
    List<List<String>> runs = new ArrayList<>();
    runs.add(List.of("--help"));
    runs.add(List.of("measure", "models/cup.stl", "--unit", "mm"));
    runs.add(List.of("measure", "models/plaque.obj", "--unit", "mm", "--json"));
    runs.add(List.of("mark", "models/cup.json", "list"));
    runs.add(List.of("plan", "models/plaque.json", "--out", trained.resolve("plan").toString()));
    if (os != Os.LINUX || System.getenv("DISPLAY") != null) {
      runs.add(List.of("window", "models/plaque.json"));
    } else {
      System.err.println("No display: the classes of the window are left out of the archive.");
    }
    Set<String> classes = new LinkedHashSet<>();
    for (List<String> command : runs) {
      Path list = trained.resolve(command.get(0) + ".classes");
      List<String> line = java(runtime, "-Xshare:auto", "-XX:DumpLoadedClassList=" + list);
      line.add(MAIN);
      line.addAll(command);
      train(line, list, command.get(0).equals("window"));
      classes.addAll(Files.readAllLines(list));
    }
    Path all = trained.resolve("all.classes");
    Files.write(all, classes);
    // Written by the one collector that also archives objects; any other can use it.
    List<String> dump = java(runtime, "-Xshare:dump", "-XX:SharedClassListFile=" + all);
    dump.add("-XX:+UseG1GC");
    dump.add("-Xlog:disable");
    finish(start(dump, trained.resolve("dump.log")), dump);
  }

  private List<String> java(Path runtime, String... options) {
    Path java = runtime.resolve("bin").resolve(os == Os.WINDOWS ? "java.exe" : "java");
    List<String> line = new ArrayList<>(List.of(java.toString()));
    line.addAll(List.of(options));
    return line;
  }

  private void train(List<String> line, Path list, boolean closed)
      throws IOException, InterruptedException {
    Process process = start(line, list.resolveSibling(list.getFileName() + ".log"));
    if (closed) {
      long before = -1;
      for (int s = 0; s < MOST_WINDOW_S && process.isAlive(); s += QUIET_S) {
        process.waitFor(QUIET_S, TimeUnit.SECONDS);
        long now = Files.exists(list) ? Files.size(list) : 0;
        if (now > 0 && now == before) {
          break;
        }
        before = now;
      }
      if (process.isAlive()) {
        process.destroy();
        process.waitFor();
        return;
      }
    }
    finish(process, line);
  }

  private static Process start(List<String> line, Path log) throws IOException {
    return new ProcessBuilder(line).redirectErrorStream(true).redirectOutput(log.toFile()).start();
  }

  private static void finish(Process process, List<String> line) throws InterruptedException {
    int code = process.waitFor();
    // 4: the plan was made but breaks a limit.
    if (code != 0 && code != 4) {
      throw new IllegalStateException("Exit code " + code + " of " + String.join(" ", line));
    }
  }

  /** Gives the runtime a launcher, an icon and, on Linux, the files that tell a desktop of it. */
  private Path pack(Path runtime, Path image) throws IOException {
    Path stub = Files.createDirectories(work.resolve("stub"));
    // The launcher wants a jar to name; the program itself is in the runtime.
    run("jar", "--create", "--file", stub.resolve(NAME + ".jar").toString(), "-C", ".", "LICENSE");
    keepOnlyJava(runtime.resolve("bin"));
    List<String> line = new ArrayList<>(List.of("--type", "app-image", "--name", NAME));
    line.addAll(List.of("--input", stub.toString(), "--main-jar", NAME + ".jar"));
    line.addAll(List.of("--main-class", MAIN, "--runtime-image", runtime.toString()));
    line.addAll(List.of("--app-version", packageVersion(), "--icon", icon().toString()));
    line.addAll(ABOUT);
    // For a start without any argument, as from a menu.
    line.addAll(List.of("--arguments", "window"));
    OPTIONS.forEach(option -> line.addAll(List.of("--java-options", option)));
    if (os == Os.WINDOWS) {
      line.add("--win-console");
    }
    line.addAll(List.of("--dest", image.toString()));
    run("jpackage", line.toArray(String[]::new));
    Path made = image.resolve(os == Os.MAC ? NAME + ".app" : NAME);
    if (os == Os.LINUX) {
      launcher(made);
      desktop(made.resolve("share"));
    }
    return made;
  }

  /**
   * Puts a script in place of jpackage's launcher, which in Java 17 on Linux asks the package
   * managers twice, at every start, whether it was installed by them: some tenths of a second.
   */
  private static void launcher(Path made) throws IOException {
    Path script = made.resolve("bin").resolve(NAME);
    String text = Files.readString(Path.of("src/image/linux/seamwright.sh"));
    Files.writeString(script, text.replace("@OPTIONS@", String.join(" ", OPTIONS)));
    Files.delete(made.resolve("lib/libapplauncher.so"));
  }

  /** Drops jlink's other commands; libraries, which Windows keeps in the same folder, stay. */
  private static void keepOnlyJava(Path bin) throws IOException {
    try (Stream<Path> files = Files.list(bin)) {
      for (Path file : files.toList()) {
        String name = file.getFileName().toString();
        if (name.matches("[a-z]+(\\.exe)?") && !name.matches("javaw?(\\.exe)?")) {
          Files.delete(file);
        }
      }
    }
  }

  /** macOS takes no version that begins with 0; the program itself tells the true one. */
  private String packageVersion() {
    return os == Os.MAC && version.startsWith("0.") ? "1" + version.substring(1) : version;
  }

  private void desktop(Path share) throws IOException {
    Path files = Path.of("src/image/linux");
    for (String name : List.of("seamwright.desktop", "seamwright-job.xml", "register.sh")) {
      Path to = Files.createDirectories(share).resolve(name);
      Files.copy(files.resolve(name), to, StandardCopyOption.COPY_ATTRIBUTES);
    }
    for (int side : ICON_SIDES) {
      Path to = share.resolve("icons/hicolor/" + side + "x" + side + "/apps/" + NAME + ".png");
      write(to, Files.readAllBytes(iconFile(side)));
    }
  }

  private static Path iconFile(int side) {
    return Path.of("src/main/resources/org/seamwright/window/icon-" + side + ".png");
  }

  /** The icon as this system wants it: PNG, or PNGs in its own container. */
  private Path icon() throws IOException {
    if (os == Os.LINUX) {
      return iconFile(256);
    }
    Path file = work.resolve(os == Os.MAC ? NAME + ".icns" : NAME + ".ico");
    Map<Integer, byte[]> pictures = new LinkedHashMap<>();
    for (int side : ICON_SIDES) {
      pictures.put(side, Files.readAllBytes(iconFile(side)));
    }
    Files.write(file, os == Os.MAC ? icns(pictures) : ico(pictures));
    return file;
  }

  /** Windows' container: a directory of 16 bytes a picture, then the pictures. */
  private static byte[] ico(Map<Integer, byte[]> pictures) {
    int at = 6 + 16 * pictures.size();
    ByteBuffer out = ByteBuffer.allocate(at + total(pictures)).order(ByteOrder.LITTLE_ENDIAN);
    out.putShort((short) 0).putShort((short) 1).putShort((short) pictures.size());
    for (Map.Entry<Integer, byte[]> picture : pictures.entrySet()) {
      // A side of 256 is written as 0.
      byte side = (byte) (int) picture.getKey();
      out.put(side).put(side).putShort((short) 0).putShort((short) 1).putShort((short) 32);
      out.putInt(picture.getValue().length).putInt(at);
      at += picture.getValue().length;
    }
    pictures.values().forEach(out::put);
    return out.array();
  }

  /** Apple's container: chunks that say type and length. */
  private static byte[] icns(Map<Integer, byte[]> pictures) {
    Map<Integer, String> types =
        Map.of(16, "icp4", 32, "icp5", 64, "icp6", 128, "ic07", 256, "ic08");
    Map<Integer, byte[]> known = new LinkedHashMap<>(pictures);
    known.keySet().retainAll(types.keySet());
    int length = 8 + 8 * known.size() + total(known);
    ByteBuffer out = ByteBuffer.allocate(length);
    out.put(ascii("icns")).putInt(length);
    known.forEach((side, png) -> out.put(ascii(types.get(side))).putInt(8 + png.length).put(png));
    return out.array();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  private static int total(Map<Integer, byte[]> pictures) {
    return pictures.values().stream().mapToInt(png -> png.length).sum();
  }

  private void installer(String type, Path made, Path image) throws IOException {
    Path job = work.resolve("job.properties");
    Files.writeString(
        job, "extension=" + ENDING + "\nmime-type=" + JOB_TYPE + "\ndescription=Seamwright job\n");
    List<String> line = new ArrayList<>(List.of("--type", type, "--name", NAME));
    line.addAll(List.of("--app-image", made.toString(), "--app-version", packageVersion()));
    line.addAll(List.of("--file-associations", job.toString(), "--dest", image.toString()));
    line.addAll(List.of("--license-file", "LICENSE"));
    line.addAll(ABOUT);
    switch (os) {
      case LINUX -> {
        // Its own desktop entry would not hand over the file that is opened.
        String entry = Files.readString(Path.of("src/image/linux/seamwright.desktop"));
        Files.writeString(
            Files.createDirectories(work.resolve("resources")).resolve(NAME + ".desktop"),
            entry
                .replace("Exec=" + NAME, "Exec=APPLICATION_LAUNCHER")
                .replace("Icon=" + NAME, "Icon=APPLICATION_ICON"));
        line.addAll(List.of("--resource-dir", work.resolve("resources").toString()));
        line.add("--linux-shortcut");
      }
      case WINDOWS -> line.addAll(List.of("--win-menu", "--win-shortcut", "--win-dir-chooser"));
      case MAC -> line.addAll(List.of("--mac-package-identifier", MODULE));
    }
    run("jpackage", line.toArray(String[]::new));
  }

  /** Runs a tool of the JDK and gives what it prints. */
  private static String run(String tool, String... args) {
    StringWriter out = new StringWriter();
    PrintWriter print = new PrintWriter(out);
    int code = ToolProvider.findFirst(tool).orElseThrow().run(print, print, args);
    print.flush();
    if (code != 0) {
      throw new IllegalStateException(
          tool + " " + String.join(" ", args) + " gave exit code " + code + "\n" + out);
    }
    return out.toString();
  }

  private static long size(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile).mapToLong(file -> file.toFile().length()).sum();
    }
  }

  private static void delete(Path folder) throws IOException {
    if (Files.exists(folder)) {
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(path);
        }
      }
    }
  }
}
