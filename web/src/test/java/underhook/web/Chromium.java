package underhook.web;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.openqa.selenium.By;
import org.openqa.selenium.ElementClickInterceptedException;
import org.openqa.selenium.Keys;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.TimeoutException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A real Chromium without a window, with a profile of its own, looking at the desk. */
final class Chromium implements AutoCloseable {
    private static final List<String> FLAGS =
            List.of(
                    "--headless",
                    "--no-sandbox",
                    "--disable-quic",
                    "--no-first-run",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                    "--disable-dev-shm-usage",
                    "--use-angle=swiftshader",
                    "--enable-unsafe-swiftshader",
                    "--lang=en");

    private final ChromeDriver driver;

    Chromium(Path profile) {
        ChromeOptions options = new ChromeOptions();
        options.addArguments(FLAGS);
        options.addArguments("--user-data-dir=" + profile);
        options.setCapability("goog:loggingPrefs", Map.of("performance", "ALL", "browser", "ALL"));
        options.setBinary(onPath("chromium").toFile());
        driver =
                new ChromeDriver(
                        new ChromeDriverService.Builder()
                                .usingDriverExecutable(onPath("chromedriver").toFile())
                                .build(),
                        options);
    }

    private static Path onPath(String program) {
        return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
                .map(folder -> Path.of(folder, program))
                .filter(Files::isExecutable)
                .findFirst()
                .orElseThrow(() -> new AssertionError(program + " is not installed."));
    }

    /** How large the screen is, and whether it is met with fingers. */
    void look(int width, int height, boolean touched) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of(
                        "width",
                        width,
                        "height",
                        height,
                        "deviceScaleFactor",
                        1,
                        "mobile",
                        touched));
        driver.executeCdpCommand("Emulation.setTouchEmulationEnabled", Map.of("enabled", touched));
    }

    /** Whether it is drawn as it would be printed. */
    void paper(boolean printed) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia", Map.of("media", printed ? "print" : ""));
    }

    /** Whether it has a network. */
    void network(boolean there) {
        driver.executeCdpCommand("Network.enable", Map.of());
        driver.executeCdpCommand(
                "Network.emulateNetworkConditions",
                Map.of(
                        "offline",
                        !there,
                        "latency",
                        0,
                        "downloadThroughput",
                        -1,
                        "uploadThroughput",
                        -1));
    }

    void open(URI address) {
        driver.get(address.toString());
    }

    /** Whether the whole page said so, sooner or later. */
    WebElement waitFor(String css) {
        return until(css, () -> find(css).stream().findFirst().orElse(null));
    }

    void waitUntil(String what, Predicate<Chromium> holds) {
        until(what, () -> holds.test(this) ? true : null);
    }

    private <T> T until(String what, Supplier<@Nullable T> seen) {
        try {
            return Objects.requireNonNull(wait(60).withMessage(what).until(ignored -> seen.get()));
        } catch (TimeoutException late) {
            // Without what it said instead, nobody finds out why.
            String said = driver.findElement(By.tagName("body")).getText();
            throw new AssertionError(what + " was waited for; the page said:\n" + said, late);
        }
    }

    /** The same, for what takes as long as planning a whole day. */
    void waitLong(String what, Predicate<Chromium> holds) {
        wait(400).withMessage(what).until(ignored -> holds.test(this));
    }

    private WebDriverWait wait(int seconds) {
        WebDriverWait wait = new WebDriverWait(driver, Duration.ofSeconds(seconds));
        wait.pollingEvery(Duration.ofMillis(50));
        wait.ignoring(StaleElementReferenceException.class);
        return wait;
    }

    List<WebElement> find(String css) {
        return driver.findElements(By.cssSelector(css));
    }

    /** By its words, as a person finds it. */
    WebElement button(String words) {
        By by =
                By.xpath(
                        "//*[self::button or self::a or self::label][contains(normalize-space(.), '"
                                + words
                                + "')]");
        return until(
                "button " + words,
                () ->
                        driver.findElements(by).stream()
                                .filter(WebElement::isDisplayed)
                                .findFirst()
                                .orElse(null));
    }

    void press(String words) {
        press(words, () -> button(words));
    }

    /** Finds and presses; what the page put something else in the place of meanwhile, or what takes no press yet, was not pressed. */
    void press(String what, Supplier<WebElement> found) {
        until(
                "pressing " + what,
                () -> {
                    try {
                        found.get().click();
                        return true;
                    } catch (ElementClickInterceptedException notYet) {
                        return null;
                    }
                });
    }

    /** As a glove does that comes down twice. */
    void pressTwice(WebElement place) {
        new Actions(driver).doubleClick(place).perform();
    }

    void type(CharSequence... keys) {
        driver.switchTo().activeElement().sendKeys(keys);
    }

    void key(Keys... chord) {
        type(Keys.chord(chord));
    }

    @Nullable Object run(String script, @Nullable Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    boolean says(String words) {
        return driver.findElement(By.tagName("body")).getText().contains(words);
    }

    byte[] picture() {
        return driver.getScreenshotAs(org.openqa.selenium.OutputType.BYTES);
    }

    /** Every address that the browser asked, since the last time. */
    Stream<String> asked() {
        return driver.manage().logs().get("performance").getAll().stream()
                .map(LogEntry::getMessage)
                .filter(message -> message.contains("\"Network.requestWillBeSent\""))
                .map(
                        message ->
                                message.replaceFirst(
                                        "(?s).*\"request\":\\{.*?\"url\":\"([^\"]*)\".*", "$1"));
    }

    /** What the page complained about on its console. */
    List<String> complaints() {
        return driver.manage().logs().get("browser").getAll().stream()
                .filter(entry -> entry.getLevel().intValue() >= Level.SEVERE.intValue())
                .map(LogEntry::getMessage)
                .toList();
    }

    /** What axe finds at level AA, and in contrast at AAA, one line for each spot. */
    List<?> axe() throws IOException {
        if (!Boolean.TRUE.equals(run("return typeof axe === 'object'"))) {
            run(axeSource());
        }
        String check =
                """
                const done = arguments[arguments.length - 1];
                const rules = { 'color-contrast-enhanced': { enabled: true } };
                const values = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
                axe.run({ runOnly: { type: 'tag', values }, rules })
                  .then((found) => done(found.violations.flatMap((rule) => rule.nodes
                    .map((node) => rule.id + ': ' + node.html.slice(0, 160) + ' ' + (node.any[0]?.message ?? '')))));
                """;
        return (List<?>) Objects.requireNonNull(driver.executeAsyncScript(check));
    }

    private static String axeSource() throws IOException {
        String path = "/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js";
        try (InputStream in = Objects.requireNonNull(Chromium.class.getResourceAsStream(path))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    static String lower(String words) {
        return words.toLowerCase(Locale.ROOT);
    }

    @Override
    public void close() {
        driver.quit();
    }
}
