package underhook.adapter.paper;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import underhook.core.job.Language;

/**
 * Sentences of the papers in another language, by their shape. What it has no words for stays English, and is
 * remembered. One file for each language, named by it: a line in English, the next one after "= " in the language.
 *
 * <p>{1} stands for whatever stands there within a sentence, and is taken over; {1=} is said in the language too, and
 * in English stands for whole sentences as well; {1,} is said word by word between commas. The first shape that fits counts. A text without a shape of its own is said sentence by sentence,
 * all of them or none.
 */
final class Tongue {
    static final Tongue ENGLISH = new Tongue();

    private static final Pattern SLOT = Pattern.compile("\\{([1-9][0-9]?)([=,]?)}");
    private static final Pattern BETWEEN_SENTENCES = Pattern.compile("(?<=\\.)(?<!\\bno\\.) ");

    private static final String WITHIN_SENTENCE = "((?:(?!\\. ).)+?)";

    /** An English sentence with slots, and what is said for it. */
    private record Shape(Pattern english, List<Integer> slots, String said) {
        static Shape of(String english, String said) {
            StringBuilder pattern = new StringBuilder();
            List<Integer> slots = new ArrayList<>();
            Matcher slot = SLOT.matcher(english);
            int from = 0;
            while (slot.find()) {
                pattern.append(Pattern.quote(english.substring(from, slot.start())))
                        .append(slot.group(2).isEmpty() ? WITHIN_SENTENCE : "(.+?)");
                slots.add(Integer.valueOf(slot.group(1)));
                from = slot.end();
            }
            pattern.append(Pattern.quote(english.substring(from)));
            return new Shape(Pattern.compile(pattern.toString()), slots, said);
        }
    }

    private final boolean isEnglish;
    private final Map<String, String> whole = new LinkedHashMap<>();
    private final List<Shape> shapes = new ArrayList<>();
    private final Set<String> unsaid = new TreeSet<>();

    private Tongue() {
        this.isEnglish = true;
    }

    private Tongue(BufferedReader file) throws IOException {
        this.isEnglish = false;
        String english = "";
        for (String line = file.readLine(); line != null; line = file.readLine()) {
            if (!line.startsWith("= ")) {
                english = line;
            } else if (SLOT.matcher(english).find()) {
                shapes.add(Shape.of(english, line.substring(2)));
            } else {
                whole.put(english, line.substring(2));
            }
        }
    }

    static Tongue of(Language language) {
        if (language == Language.EN) {
            return ENGLISH;
        }
        try (InputStream in = Tongue.class.getResourceAsStream(language.word() + ".txt")) {
            if (in == null) {
                throw new IllegalStateException("no words for " + language + ".");
            }
            return new Tongue(
                    new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The text in the language, or as it is where there are no words for it. */
    String say(String english) {
        if (isEnglish || english.isBlank()) {
            return english;
        }
        Optional<String> said = find(english);
        if (said.isEmpty()) {
            unsaid.add(english);
        }
        return said.orElse(english);
    }

    /** What was asked for and has no words. */
    Set<String> listUnsaid() {
        return Set.copyOf(unsaid);
    }

    private Optional<String> find(String english) {
        String text = english.strip();
        Optional<String> said = findOne(text);
        return said.isPresent() || !BETWEEN_SENTENCES.matcher(text).find()
                ? said
                : findAll(BETWEEN_SENTENCES.split(text));
    }

    private Optional<String> findAll(String[] sentences) {
        List<String> all = new ArrayList<>();
        for (String sentence : sentences) {
            findOne(sentence).ifPresent(all::add);
        }
        return all.size() == sentences.length
                ? Optional.of(String.join(" ", all))
                : Optional.empty();
    }

    /** A sentence in a row of others ends with a full stop that it may not have alone. */
    private Optional<String> findOne(String text) {
        return findExactly(text)
                .or(
                        () ->
                                text.endsWith(".")
                                        ? findExactly(text.substring(0, text.length() - 1))
                                                .map(said -> said + ".")
                                        : Optional.empty());
    }

    private Optional<String> findExactly(String text) {
        String known = whole.get(text);
        if (known != null) {
            return Optional.of(known);
        }
        for (Shape shape : shapes) {
            Matcher fits = shape.english().matcher(text);
            if (fits.matches()) {
                return Optional.of(filled(shape, fits));
            }
        }
        return Optional.empty();
    }

    private String filled(Shape shape, MatchResult fits) {
        return SLOT.matcher(shape.said())
                .replaceAll(
                        slot -> {
                            int number = Integer.parseInt(slot.group(1));
                            String value = fits.group(shape.slots().indexOf(number) + 1);
                            return Matcher.quoteReplacement(sayIn(slot.group(2), value));
                        });
    }

    private String sayIn(String how, String value) {
        return switch (how) {
            case "=" -> find(value).orElse(value);
            case "," ->
                    Stream.of(value.split(", "))
                            .map(word -> find(word).orElse(word))
                            .collect(Collectors.joining(", "));
            default -> value;
        };
    }
}
