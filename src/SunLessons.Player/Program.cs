// WebAssembly asks for a beginning; nothing happens until the page's script calls what LessonPlayer exports.
return;
