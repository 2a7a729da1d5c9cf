using System.Net;
using System.Text;

namespace SunLessons.Notebooks.Markup;

/// <summary>
/// Turns the small subset of TeX that lessons use into MathML Core (W3C), which browsers draw by themselves: numbers,
/// letters, Greek, sub- and superscripts, fractions, roots, functions, degrees, words (\text, \mathrm), brackets and the
/// usual signs. A minus becomes U+2212; each pair of brackets stands in a row of its own, because a bracket otherwise
/// grows to the height of its whole row. Anything else is not guessed at: the result says what was not understood.
/// </summary>
public static class TexToMathMl
{
    private const int MaxDepth = 60;

    /// <summary>Converts one formula.</summary>
    /// <param name="tex">The formula without its dollar signs.</param>
    /// <param name="display">True for a formula on a line of its own ("$$"), false inside a sentence ("$").</param>
    public static MathMarkup Convert(string tex, bool display)
    {
        try
        {
            var parser = new Parser(tex);
            string row = parser.Row(end: '\0');
            string shape = display ? " display=\"block\"" : "";
            return new($"<math xmlns=\"http://www.w3.org/1998/Math/MathML\"{shape}><mrow>{row}</mrow></math>", null);
        }
        catch (FormatException problem)
        {
            string source = WebUtility.HtmlEncode(tex.Trim());
            string html = display ? $"<pre><code>{source}</code></pre>" : $"<code>{source}</code>";
            return new(html, $"The formula \"{tex.Trim()}\" {problem.Message}; formulas here are made of numbers, letters, Greek, ^, _, \\frac, \\sqrt, \\text, functions such as \\sin, and brackets.");
        }
    }

    private sealed class Parser(string tex)
    {
        private int _at;
        private int _depth;

        private char Now => _at < tex.Length ? tex[_at] : '\0';

        /// <summary>Reads items up to the given end sign, which is eaten. '\0' is the end of the formula.</summary>
        public string Row(char end)
        {
            var row = new StringBuilder();
            while (true)
            {
                SkipBlanks();
                if (Now == end)
                {
                    _at++;
                    return row.ToString();
                }

                if (_at >= tex.Length)
                {
                    throw new FormatException($"ends before its \"{end}\"");
                }

                row.Append(Item());
            }
        }

        /// <summary>One thing with the scripts that hang on it.</summary>
        private string Item()
        {
            string thing = Thing(out bool isFunction);
            thing = WithScripts(thing);
            if (!isFunction)
            {
                return thing;
            }

            // U+2061 says aloud that the function is applied; the thin space keeps "sin x" from reading as one word.
            SkipBlanks();
            string gap = Now is '(' or '[' or '\0' or '}' ? "" : "<mspace width=\"0.167em\"></mspace>";
            return $"{thing}<mo>\u2061</mo>{gap}";
        }

        private string WithScripts(string thing)
        {
            string? below = null;
            string? above = null;
            while (true)
            {
                SkipBlanks();
                if (Now == '_' && below is null)
                {
                    _at++;
                    below = Argument();
                }
                else if (Now == '^' && above is null)
                {
                    _at++;
                    above = Argument();
                }
                else if (Now == '\'' && above is null)
                {
                    int start = _at;
                    while (Now == '\'')
                    {
                        _at++;
                    }

                    above = $"<mo>{new string('′', _at - start)}</mo>";
                }
                else if (Now is '_' or '^' or '\'')
                {
                    throw new FormatException($"has two \"{Now}\" in a row");
                }
                else
                {
                    break;
                }
            }

            // A degree sign is no power: it stands on the number's line and is read as "degrees".
            if (above == "<mo>°</mo>" && below is null)
            {
                return $"<mrow>{thing}<mi>°</mi></mrow>";
            }

            return (below, above) switch
            {
                (null, null) => thing,
                (not null, null) => $"<msub>{thing}{below}</msub>",
                (null, not null) => $"<msup>{thing}{above}</msup>",
                _ => $"<msubsup>{thing}{below}{above}</msubsup>",
            };
        }

        /// <summary>A group in braces, or the single thing that TeX takes when there are none.</summary>
        private string Argument()
        {
            SkipBlanks();
            if (Now == '{')
            {
                _at++;
                string row = Row('}');
                return row == "<mo>°</mo>" ? row : $"<mrow>{row}</mrow>";
            }

            if (_at >= tex.Length)
            {
                throw new FormatException("ends where something must follow");
            }

            // TeX takes one digit here, not a whole number: x^12 is x to the 1, then 2.
            if (char.IsAsciiDigit(Now))
            {
                return $"<mn>{tex[_at++]}</mn>";
            }

            return Thing(out _);
        }

        /// <summary>One thing without scripts. Every way of nesting comes through here, so that the depth is counted here.</summary>
        private string Thing(out bool isFunction)
        {
            if (++_depth > MaxDepth)
            {
                throw new FormatException($"is nested more than {MaxDepth} levels deep");
            }

            string thing = Bare(out isFunction);
            _depth--;
            return thing;
        }

        private string Bare(out bool isFunction)
        {
            isFunction = false;
            char sign = Now;
            if (char.IsAsciiDigit(sign) || (sign == '.' && _at + 1 < tex.Length && char.IsAsciiDigit(tex[_at + 1])))
            {
                int start = _at;
                while (char.IsAsciiDigit(Now) || (Now == '.' && _at + 1 < tex.Length && char.IsAsciiDigit(tex[_at + 1])))
                {
                    _at++;
                }

                return $"<mn>{tex[start.._at]}</mn>";
            }

            if (char.IsAsciiLetter(sign))
            {
                _at++;
                return $"<mi>{sign}</mi>";
            }

            if (sign == '\\')
            {
                return Command(out isFunction);
            }

            _at++;
            switch (sign)
            {
                case '{':
                    return $"<mrow>{Row('}')}</mrow>";
                case '(':
                    return $"<mrow><mo>(</mo>{Row(')')}<mo>)</mo></mrow>";
                case '[':
                    return $"<mrow><mo>[</mo>{Row(']')}<mo>]</mo></mrow>";
                case '|':
                    return $"<mrow><mo>|</mo>{Row('|')}<mo>|</mo></mrow>";
                case '-' or '\u2212':
                    return "<mo>\u2212</mo>";
                case '+' or '=' or '/' or ',' or ':' or ';' or '!' or '±' or '×' or '≈' or '→' or '≤' or '≥' or '…':
                    return $"<mo>{sign}</mo>";
                case '<':
                    return "<mo>&lt;</mo>";
                case '>':
                    return "<mo>&gt;</mo>";
                case '°':
                    return "<mi>°</mi>";
                default:
                    throw new FormatException($"has \"{sign}\" where nothing of the kind is known");
            }
        }

        private string Command(out bool isFunction)
        {
            isFunction = false;
            string name = CommandName();
            if (TexSymbols.Letters.TryGetValue(name, out string? letter))
            {
                return $"<mi>{letter}</mi>";
            }

            if (TexSymbols.Functions.Contains(name))
            {
                isFunction = true;
                return $"<mi>{name}</mi>";
            }

            if (TexSymbols.Operators.TryGetValue(name, out string? sign))
            {
                return $"<mo>{sign}</mo>";
            }

            if (TexSymbols.Spaces.TryGetValue(name, out string? width))
            {
                return $"<mspace width=\"{width}\"></mspace>";
            }

            return name switch
            {
                "frac" or "tfrac" or "dfrac" => $"<mfrac>{Argument()}{Argument()}</mfrac>",
                "sqrt" => Root(),
                "text" => $"<mtext>{Words()}</mtext>",
                "mathrm" or "operatorname" => $"<mi mathvariant=\"normal\">{Words()}</mi>",
                "left" => Sized(),
                "{" => $"<mrow><mo>{{</mo>{Escaped('}')}<mo>}}</mo></mrow>",
                _ => throw new FormatException($"uses \"\\{name}\", which is not known"),
            };
        }

        private string CommandName()
        {
            _at++;
            if (_at >= tex.Length)
            {
                throw new FormatException("ends with a lone \"\\\"");
            }

            int start = _at;
            while (char.IsAsciiLetter(Now))
            {
                _at++;
            }

            return _at > start ? tex[start.._at] : tex[_at++].ToString();
        }

        private string Root()
        {
            SkipBlanks();
            if (Now != '[')
            {
                return $"<msqrt>{Argument()}</msqrt>";
            }

            _at++;
            string degree = Row(']');
            return $"<mroot>{Argument()}<mrow>{degree}</mrow></mroot>";
        }

        /// <summary>The words of \text{...}: taken as they stand, spaces too.</summary>
        private string Words()
        {
            SkipBlanks();
            if (Now != '{')
            {
                throw new FormatException("has words without braces around them");
            }

            int end = tex.IndexOf('}', _at);
            if (end < 0)
            {
                throw new FormatException("ends before its \"}\"");
            }

            string words = tex[(_at + 1)..end];
            if (words.Contains('{') || words.Contains('\\'))
            {
                throw new FormatException("has more than plain words inside \\text");
            }

            _at = end + 1;

            // MathML trims blanks at the ends of a text; a no-break space stays.
            string kept = WebUtility.HtmlEncode(words);
            return (kept.StartsWith(' ') ? "\u00a0" : "") + kept.Trim() + (kept.EndsWith(' ') ? "\u00a0" : "");
        }

        /// <summary>\left( ... \right): brackets that grow, which MathML brackets do by themselves.</summary>
        private string Sized()
        {
            SkipBlanks();
            char open = Now;
            _at++;
            if (open is not ('(' or '[' or '|'))
            {
                throw new FormatException($"has \\left before \"{open}\", and only ( [ | grow");
            }

            var row = new StringBuilder();
            while (true)
            {
                SkipBlanks();
                if (_at >= tex.Length)
                {
                    throw new FormatException("has \\left without \\right");
                }

                if (tex.AsSpan(_at).StartsWith(@"\right") && !(_at + 6 < tex.Length && char.IsAsciiLetter(tex[_at + 6])))
                {
                    _at += 6;
                    SkipBlanks();
                    char close = Now;
                    _at++;
                    if (close is not (')' or ']' or '|'))
                    {
                        throw new FormatException($"has \\right before \"{close}\", and only ) ] | grow");
                    }

                    return $"<mrow><mo>{open}</mo>{row}<mo>{close}</mo></mrow>";
                }

                row.Append(Item());
            }
        }

        private string Escaped(char end)
        {
            var row = new StringBuilder();
            while (true)
            {
                SkipBlanks();
                if (_at >= tex.Length)
                {
                    throw new FormatException($"ends before its \"\\{end}\"");
                }

                if (Now == '\\' && _at + 1 < tex.Length && tex[_at + 1] == end)
                {
                    _at += 2;
                    return row.ToString();
                }

                row.Append(Item());
            }
        }

        private void SkipBlanks()
        {
            while (_at < tex.Length && char.IsWhiteSpace(tex[_at]))
            {
                _at++;
            }
        }
    }
}
