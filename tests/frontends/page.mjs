// A bare front end: Jupyter's own services and widget manager, and not one line about SunLessons.
//   ?token=T&kernel=NAME&notebook=FILE   starts a kernel, runs the notebook's code cells and shows what they give
//   ?token=T&id=KERNEL                   comes back to a running kernel and shows every control that it holds
//   ?saved=FILE                          shows a saved notebook's controls from the state in it, with no kernel
import { shims } from '@jupyter-widgets/base';
import { HTMLManager } from '@jupyter-widgets/html-manager';
import { KernelManager, ServerConnection } from '@jupyterlab/services';

const STATE = 'application/vnd.jupyter.widget-state+json';
const VIEW = 'application/vnd.jupyter.widget-view+json';
const TARGET = 'jupyter.widget';
const asked = new URLSearchParams(location.search);

class KernelWidgets extends HTMLManager {
  constructor(kernel) {
    super();
    this.kernel = kernel;
    kernel.registerCommTarget(TARGET, (comm, message) => this.handle_comm_open(new shims.services.Comm(comm), message));
  }

  async _create_comm(target, id, data, metadata, buffers) {
    const comm = this.kernel.createComm(target, id);
    if (data || metadata) {
      comm.open(data, metadata, buffers);
    }
    return new shims.services.Comm(comm);
  }

  async _get_comm_info() {
    const reply = await this.kernel.requestCommInfo({ target_name: TARGET });
    return reply.content.status === 'ok' ? reply.content.comms : {};
  }

  async show(id, element) {
    const model = await this.get_model(id);
    await this.display_view(this.create_view(model), element);
  }
}

const main = document.querySelector('main');
const settings = ServerConnection.makeSettings({
  baseUrl: location.origin + '/',
  wsUrl: location.origin.replace(/^http/, 'ws') + '/',
  token: asked.get('token'),
  appendToken: true,
});
const kernels = new KernelManager({ serverSettings: settings });

function section(name) {
  const element = document.createElement('section');
  element.dataset.cell = name;
  main.append(element);
  return element;
}

async function showOutput(widgets, element, message) {
  const { msg_type: type } = message.header;
  const { content } = message;
  const place = document.createElement('div');
  element.append(place);
  if (type === 'stream') {
    place.textContent = content.text;
  } else if (type === 'error') {
    place.className = 'error';
    place.textContent = `${content.ename}: ${content.evalue}`;
  } else if (content.data?.[VIEW]) {
    await widgets.show(content.data[VIEW].model_id, place);
  } else if (content.data?.['text/html']) {
    place.innerHTML = content.data['text/html'];
  } else if (content.data?.['text/plain']) {
    place.textContent = content.data['text/plain'];
  }
}

async function runNotebook() {
  const kernel = await kernels.startNew({ name: asked.get('kernel') });
  document.body.dataset.kernel = kernel.id;
  const widgets = new KernelWidgets(kernel);
  await kernel.info;
  const notebook = await (await fetch(asked.get('notebook'))).json();
  // As a front end saves a notebook: the views in the outputs, the state of the controls as it is at that moment.
  window.save = async () => ({ ...notebook, metadata: { ...notebook.metadata, widgets: { [STATE]: await widgets.get_state() } } });
  for (const cell of notebook.cells.filter((one) => one.cell_type === 'code')) {
    const element = section(cell.id);
    const shown = [];
    cell.outputs = [];
    const future = kernel.requestExecute({ code: [cell.source].flat().join(''), stop_on_error: false });
    future.onIOPub = (message) => {
      if (['stream', 'error', 'display_data', 'execute_result'].includes(message.header.msg_type)) {
        cell.outputs.push({ output_type: message.header.msg_type, ...message.content });
        shown.push(showOutput(widgets, element, message));
      }
    };
    const reply = await future.done;
    await Promise.all(shown);
    element.dataset.reply = reply.content.status;
  }
}

async function comeBack() {
  const kernel = kernels.connectTo({ model: { id: asked.get('id'), name: '' } });
  const widgets = new KernelWidgets(kernel);
  await kernel.info;
  await widgets._loadFromKernel();
  for (const id of Object.keys(await widgets._get_comm_info())) {
    const model = await widgets.get_model(id);
    // Layouts and styles belong to a control and are not shown by themselves.
    if (model.get('_view_module') === '@jupyter-widgets/controls' && !model.get('_model_name').endsWith('StyleModel')) {
      await widgets.show(id, section(id));
    }
  }
}

async function showSaved() {
  const notebook = await (await fetch(asked.get('saved'))).json();
  const widgets = new HTMLManager();
  await widgets.set_state(notebook.metadata.widgets[STATE]);
  for (const cell of notebook.cells) {
    const element = section(cell.id);
    for (const output of (cell.outputs ?? []).filter((one) => one.data?.[VIEW])) {
      const place = document.createElement('div');
      element.append(place);
      const model = await widgets.get_model(output.data[VIEW].model_id);
      await widgets.display_view(widgets.create_view(model), place);
    }
  }
}

(asked.has('saved') ? showSaved() : asked.has('id') ? comeBack() : runNotebook()).then(
  () => (document.body.dataset.state = 'ready'),
  (problem) => {
    document.body.dataset.state = 'failed';
    main.append(String(problem?.stack ?? problem));
  },
);
