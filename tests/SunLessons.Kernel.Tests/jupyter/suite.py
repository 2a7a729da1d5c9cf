"""Jupyter's own kernel test suite (jupyter_kernel_test), with every group of samples filled in, so that nothing is skipped."""
import unittest

import kernelspec
import jupyter_kernel_test


class SuiteOfTheKernel(jupyter_kernel_test.KernelTests):
    kernel_name = kernelspec.install()
    language_name = "C#"
    file_extension = ".cs"
    code_hello_world = 'Console.WriteLine("hello, world");'
    code_stderr = 'Console.Error.WriteLine("to stderr");'
    completion_samples = [
        {"text": "Console.Wri", "matches": {"Write", "WriteLine"}},
        {"text": "Math.Sinh", "matches": {"Sinh"}},
    ]
    complete_code_samples = ["1", "var x = 1;", "int F(int n)\n{\n    return n;\n}", 'Console.WriteLine("sun");']
    incomplete_code_samples = ["Math.Sin(", "for (var i = 0; i < 3; i++) {", "int F(int n) {\n    return n;"]
    invalid_code_samples = ["import = 7q", "var = ;", "1 + ) 2;"]
    code_page_something = "?Math"
    code_generate_error = 'throw new InvalidOperationException("on purpose");'
    code_execute_result = [{"code": "6*7", "result": "42"}, {"code": '"sun" + "dial"', "result": "sundial"}]
    code_display_data = [
        {"code": 'display(HTML("<b>noon</b>"))', "mime": "text/html"},
        {"code": "<svg xmlns='http://www.w3.org/2000/svg'></svg>", "mime": "image/svg+xml"},
    ]
    code_inspect_sample = "Math.Sin"
    supported_history_operations = ("tail", "range", "search")
    code_history_pattern = "6?7*"
    code_clear_output = "clear_output();"


if __name__ == "__main__":
    unittest.main(verbosity=2)
